using OnboardHeat.Simulation;

namespace OnboardHeat.Core.Tests.Simulation;

/// <summary>First law of thermodynamics: what is held changes by what came in less what went out.</summary>
public sealed class EnergyBalanceTests
{
    public static TheoryData<string, int> EveryKind()
    {
        var data = new TheoryData<string, int>();
        foreach (var kind in Enum.GetNames<ScenarioKind>())
        {
            data.Add(kind, 7);
            data.Add(kind, 1234);
        }

        return data;
    }

    [Theory]
    [MemberData(nameof(EveryKind))]
    public void AnyScenario_ClosesItsHeatBalance(string kind, int seed) =>
        Balances(Scenarios.Make(Enum.Parse<ScenarioKind>(kind), seed).Start(), $"{kind} {seed}");

    [Fact]
    public void WorksOnTheCircuit_HosesOffAndFilledAgain_CloseTheirHeatBalance()
    {
        var drive = DrivePlans.MountainDay(hoseComesOff: false)
            .With(new Happening(5000, HappeningKind.HosesTakenOff, 900, 2.5));
        Balances(new SimulatedVan(new VanTraits(), drive, 1), "works");
    }

    private static void Balances(SimulatedVan van, string name)
    {
        van.Step();
        var first = van.Balance;
        while (van.Step())
        {
        }

        var last = van.Balance;
        var moved = Math.Abs(last.InJ - first.InJ) + Math.Abs(last.OutJ - first.OutJ);
        var gap = (last.HeldJ - first.HeldJ) - ((last.InJ - first.InJ) - (last.OutJ - first.OutJ));
        Assert.True(moved > 1e4, $"nothing moved in {name}");
        Assert.InRange(Math.Abs(gap) / moved, 0, 1e-6);
    }

    [Fact]
    public void ADriveAndANight_ReallyMoveHeat()
    {
        // GIVEN the mountain day WHEN it is driven THEN the engine burnt some tens of megajoules into the coolant (10
        // to 20 kW mean).
        var van = new SimulatedVan(new VanTraits(), DrivePlans.MountainDay(hoseComesOff: false), 1);
        var drivenS = 0.0;
        while (van.Step())
        {
            drivenS += van.Truth.IsEngineOn ? van.Plan.ScanPeriodS : 0;
        }

        Assert.InRange(van.Balance.InJ / drivenS, 6_000, 25_000);
    }
}
