using OnboardHeat.Simulation;
using OnboardHeat.Simulation.Physics;

namespace OnboardHeat.Core.Tests.Simulation;

public sealed class CoilPhysicsTests
{
    [Fact]
    public void SteadyCoil_GivesWhatItsEffectivenessSays()
    {
        // Effectiveness-NTU with the tank side well mixed (Incropera ch. 11, from memory): T_out = T_in - (1 -
        // e^-NTU)(T_in - T_tank). At 5 L/min and 35 K the conductance is the nominal one, 45 W/K.
        var tank = new LayeredTank(new TankTraits { VolumeLitres = 4000, LossWPerK = 0 }, new HeatBook());
        tank.Fill(45, 45, 0.5);
        var coil = new Coil(new CoilTraits { ConductanceWPerK = 45 }, tank);
        var leaving = 0.0;
        for (var i = 0; i < 300; i++)
        {
            leaving = coil.Pass(1, 5 / 60.0, 82.5, isForwards: true);
        }

        var carriedWPerK = 5 / 60.0 * Fluids.CoolantJPerLitreK;
        var expected = 82.5 - ((1 - Math.Exp(-45 / carriedWPerK)) * (82.5 - 45));
        Assert.InRange(leaving, expected - 0.15, expected + 0.15);
        Assert.InRange(coil.GivenW, (carriedWPerK * (82.5 - leaving)) - 1, (carriedWPerK * (82.5 - leaving)) + 1);
    }

    [Fact]
    public void FlowReturnDifference_IsSomeFourKelvinAtFiveLitresAndThirtyFiveKelvin()
    {
        // Common practice, no source (check values, orders of magnitude): about 4 K.
        var tank = new LayeredTank(new TankTraits { VolumeLitres = 4000 }, new HeatBook());
        tank.Fill(45, 45, 0.5);
        var coil = new Coil(new CoilTraits(), tank);
        var leaving = 0.0;
        for (var i = 0; i < 300; i++)
        {
            leaving = coil.Pass(1, 5 / 60.0, 80, isForwards: true);
        }

        Assert.InRange(80 - leaving, 3, 6);
    }

    [Fact]
    public void ColdCircuit_TakesHeatOutOfTheTank()
    {
        var tank = new LayeredTank(new TankTraits(), new HeatBook());
        tank.Fill(60, 60, 0.5);
        var coil = new Coil(new CoilTraits(), tank);
        for (var i = 0; i < 30; i++)
        {
            coil.Pass(1, 0.05, 15, isForwards: true);
        }

        Assert.True(coil.GivenW < -300, $"{coil.GivenW:0} W");
    }
}
