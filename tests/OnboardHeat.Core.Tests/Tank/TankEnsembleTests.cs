using OnboardHeat.Core.Tank;

namespace OnboardHeat.Core.Tests.Tank;

public sealed class TankEnsembleTests
{
    [Fact]
    public void OneUnknownReadDirectly_GetsTheGainsOfTheScalarKalmanFilter()
    {
        // Welch and Bishop, TR 95-041: R = 0.01, Q = 1e-5, P0 = 1. The ensemble square-root filter is exact for one
        // linear unknown; deviations after steps 1, 2, 3, 5, 10, 20, 50 as evaluated from the scalar recursion.
        var expected = new Dictionary<int, double>
        {
            [1] = .0099009911, [2] = .0049776483, [3] = .0033278392, [5] = .0020080135, [10] = .0010273160,
            [20] = .00055982377, [50] = .00033921082,
        };
        var ensemble = new TankEnsemble();
        FixedScatter.Normal(0).CopyTo(ensemble[Row.Loss]);
        for (var step = 1; step <= 50; step++)
        {
            var before = ensemble.Deviation(Row.Loss);
            ensemble.Widen(Row.Loss, Math.Sqrt((before * before) + 1e-5) / before);
            ensemble[Row.Loss].CopyTo(ensemble.Predicted);
            ensemble.Assimilate(-0.37727, 0.01, 100, [Row.Loss], [], out _);
            if (expected.TryGetValue(step, out var variance))
            {
                Assert.Equal(variance, Math.Pow(ensemble.Deviation(Row.Loss), 2), variance * 1e-6);
            }
        }

        Assert.Equal(-0.37727, ensemble.Mean(Row.Loss), 0.001);
    }

    [Fact]
    public void WithoutNoise_TheFilterIsTheRunningMean()
    {
        // P0 large, Q = 0: the gain is 1/k, an identity.
        var ensemble = new TankEnsemble();
        for (var m = 0; m < TankEnsemble.Members; m++)
        {
            ensemble[Row.Loss][m] = 1e4 * FixedScatter.Normal(0)[m];
        }

        double[] readings = [3, 1, 4, 1, 5, 9, 2, 6];
        foreach (var reading in readings)
        {
            ensemble[Row.Loss].CopyTo(ensemble.Predicted);
            ensemble.Assimilate(reading, 1, 1e9, [Row.Loss], [], out _);
        }

        Assert.Equal(readings.Average(), ensemble.Mean(Row.Loss), 1e-4);
    }

    [Fact]
    public void ReadingFarOff_MovesOnlyByItsClip()
    {
        var ensemble = new TankEnsemble();
        FixedScatter.Normal(0).CopyTo(ensemble[Row.Loss]);
        FixedScatter.Normal(0).CopyTo(ensemble.Predicted);
        var off = ensemble.Assimilate(1e6, 1, 3, [Row.Loss], [], out _);
        Assert.True(off > 1e5);
        Assert.InRange(ensemble.Mean(Row.Loss), 0, 3 * Math.Sqrt(2));
    }

    [Fact]
    public void Scatter_IsCentredOfUnitSizeAndUncorrelated()
    {
        for (var a = 0; a < 24; a++)
        {
            Assert.Equal(0, FixedScatter.Normal(a).ToArray().Average(), 1e-9);
            for (var b = 0; b <= a; b++)
            {
                var dot = 0.0;
                for (var m = 0; m < TankEnsemble.Members; m++)
                {
                    dot += FixedScatter.Normal(a)[m] * FixedScatter.Normal(b)[m];
                }

                Assert.Equal(a == b ? 1 : 0, dot / (TankEnsemble.Members - 1), 1e-9);
            }
        }
    }

    [Fact]
    public void FourMembersAtATime_AreTheSingleTank()
    {
        var tank = new TankGeometry(new TankDescription { VolumeLitres = 19 });
        var hypothesis = new TankHypothesis(
            tank, new EnsemblePrior(new TankDescription { VolumeLitres = 19 }, new LearntTank(), null), 1);
        var prior = new EnsemblePrior(new TankDescription { VolumeLitres = 19 }, new LearntTank(), null);
        prior.Spread(hypothesis.Ensemble, hasAir: true, [true, false, true]);
        hypothesis.Spread(60, 20, knowsBottom: true);
        var ensemble = hypothesis.Ensemble;
        var single = new double[TankGeometry.Layers];
        ensemble.CopyLayers(17, single);
        var air = 10 + ensemble[Row.AirOffset][17];
        var coolant = air + (ensemble[Row.CoolantGain][17] * (80 - air));
        var reach = ensemble[Row.CoilReach][17];
        var foot = ensemble[Row.CoilFoot][17] * Math.Clamp((reach - 7) / 2, 0, 1);
        LayeredTank.Pass(
            single, tank, new TankSurrounds(
                air, ensemble[Row.Loss][17], coolant, ensemble[Row.Coil][17], foot, reach,
                ensemble[Row.Element][17]), 30);
        new EnsembleStep(ensemble, tank, 1).Pass(30, 10, 80, isElementOn: true);
        for (var i = 0; i < TankGeometry.Layers; i++)
        {
            Assert.Equal(single[i], ensemble[Row.Layer + i][17], 1e-9);
        }
    }
}
