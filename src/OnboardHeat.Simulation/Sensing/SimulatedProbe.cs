using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Screening;

namespace OnboardHeat.Simulation.Sensing;

/// <summary>
/// One probe: follows its place late, shows part of it, is off by its offset, and gives steps of 1/16 K (the 12-bit
/// register of the DS18B20 data sheet). Trouble of several kinds can be put upon it.
/// </summary>
internal sealed class SimulatedProbe(ProbeTraits traits, double stepK)
{
    /// <summary>
    /// The register's step, kelvin: 12 bits, 16 to the kelvin. A vehicle's own sensor gives whole degrees.
    /// </summary>
    public const double RegisterStepK = 0.0625, VehicleStepK = 1;

    /// <summary>A probe in still air follows this much more slowly than one on metal.</summary>
    private const double AirLagFactor = 5;

    private double _celsius = double.NaN;
    private double _stuckAt = double.NaN;

    /// <summary>Trouble put upon it; null while it works.</summary>
    public HappeningKind? Trouble { get; set; }

    /// <summary>Added by a jump, kelvin.</summary>
    public double JumpK { get; set; }

    /// <summary>Share of the contact with its place: 1 on it, near 0 off it.</summary>
    public double ContactShare { get; set; } = 1;

    /// <summary>Follows its place for a step.</summary>
    public void Follow(double stepS, double placeCelsius, double airCelsius)
    {
        var target = airCelsius + ((placeCelsius - airCelsius) * traits.ShowsShare * ContactShare);
        var lag = traits.LagS * (ContactShare < 0.5 ? AirLagFactor : 1);
        _celsius = double.IsNaN(_celsius) ? target : _celsius + ((target - _celsius) * stepS / (lag + stepS));
    }

    /// <summary>What it gives in a scan.</summary>
    public Reading Read(Chance chance)
    {
        var noise = traits.NoiseK * chance.Jitter();
        switch (Trouble)
        {
            case HappeningKind.ProbeMissing:
                return Reading.None;
            case HappeningKind.ProbeBadCrc:
                return Reading.Failed(ReadingFault.BadCrc);
            case HappeningKind.ProbePowerOn:
                return Reading.Of(85);
            case HappeningKind.ProbeAllZero:
                return Reading.Of(0);
        }

        var shown = _celsius + traits.OffsetK + noise + JumpK;
        if (Trouble == HappeningKind.ProbeStuck)
        {
            _stuckAt = double.IsNaN(_stuckAt) ? shown : _stuckAt;
            shown = _stuckAt;
        }
        else
        {
            _stuckAt = double.NaN;
        }

        // The register is a whole number of steps, and holds -55 to +125 °C.
        return Reading.Of(Math.Clamp(Math.Floor((shown / stepK) + 0.5) * stepK, -55, 125));
    }
}
