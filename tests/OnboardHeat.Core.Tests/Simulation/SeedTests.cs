using OnboardHeat.Simulation;

namespace OnboardHeat.Core.Tests.Simulation;

public sealed class SeedTests
{
    [Theory]
    [InlineData(nameof(ScenarioKind.Ordinary))]
    [InlineData(nameof(ScenarioKind.Glitches))]
    [InlineData(nameof(ScenarioKind.NightWithDraws))]
    public void SameSeed_GivesTheSameScans(string kind) => Assert.Equal(Recorded(kind, 42), Recorded(kind, 42));

    [Theory]
    [InlineData(nameof(ScenarioKind.Ordinary))]
    [InlineData(nameof(ScenarioKind.Night))]
    public void AnotherSeed_GivesOtherScans(string kind) => Assert.NotEqual(Recorded(kind, 42), Recorded(kind, 43));

    [Fact]
    public void AnotherSeedForTheSameVanAndPlan_DiffersInItsSmallThingsOnly()
    {
        var plan = DrivePlans.MountainDay(hoseComesOff: false);
        var (first, second) = (new SimulatedVan(new VanTraits(), plan, 1), new SimulatedVan(new VanTraits(), plan, 2));
        while (first.Step() && second.Step())
        {
        }

        Assert.NotEqual(first.Truth.MeanCelsius, second.Truth.MeanCelsius);
        Assert.InRange(first.Truth.MeanCelsius - second.Truth.MeanCelsius, -5, 5);
    }

    private static string Recorded(string kind, int seed)
    {
        using var text = new StringWriter();
        RecordingWriter.WriteAll(Scenarios.Make(Enum.Parse<ScenarioKind>(kind), seed).Start(), text);
        return text.ToString();
    }
}
