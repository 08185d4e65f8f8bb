using OnboardHeat.Core.Quantities;
using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Screening;
using OnboardHeat.Core.Water;

namespace OnboardHeat.Core.Tank;

/// <summary>Follows the tank from scan to scan.</summary>
internal sealed class TankEstimator(VanDescription van, LearntTank learnt)
{
    /// <summary>The estimate after the newest scan.</summary>
    public TankEstimate Current { get; private set; } = TankEstimate.Unknown;

    /// <summary>Takes a scan.</summary>
    public void Observe(ScreenedScan scan)
    {
        double sum = 0, top = double.MinValue, bottom = double.MaxValue;
        var count = 0;
        foreach (var channel in (ReadOnlySpan<Channel>)[Channel.TankTop, Channel.TankMiddle, Channel.TankBottom])
        {
            if (scan[channel].IsGood)
            {
                var celsius = scan[channel].Value;
                sum += celsius;
                count++;
                top = Math.Max(top, celsius);
                bottom = Math.Min(bottom, celsius);
            }
        }

        if (count == 0)
        {
            return;
        }

        var mean = sum / count;
        var storedJ = WaterProperties.HeatJ(van.Tank.VolumeLitres, mean, van.Tank.ColdSupplyCelsius)
            + (van.Tank.EffectiveVesselMassKg * Materials.SteelJPerKgK * (mean - van.Tank.ColdSupplyCelsius));
        Current = new TankEstimate
        {
            IsKnown = true,
            LayerCelsius = [bottom, mean, top],
            TopCelsius = new Estimate(top, 0.5, TimeSpan.Zero, count),
            MeanCelsius = new Estimate(mean, 0.5, TimeSpan.Zero, count),
            BottomCelsius = new Estimate(bottom, 0.5, TimeSpan.Zero, count),
            StoredJ = new Estimate(storedJ, 0.05 * Math.Abs(storedJ), TimeSpan.Zero, count),
        };
    }

    /// <summary>What is worth keeping.</summary>
    public LearntTank Learnt() => learnt;
}
