using OnboardHeat.Core.Scans;

namespace OnboardHeat.Core.Screening;

/// <summary>
/// A scan after screening: what the estimators and watchers see. Reused from scan to scan; read it, do not keep it.
/// </summary>
internal sealed class ScreenedScan
{
    private readonly ScreenedReading[] _readings = new ScreenedReading[Channels.Count];

    /// <summary>What is fitted in this van.</summary>
    public required FittedSet Fitted { get; init; }

    /// <summary>Run number of the scan.</summary>
    public int Run { get; internal set; }

    /// <summary>Seconds since the run began.</summary>
    public double ElapsedS { get; internal set; }

    /// <summary>Seconds since the scan before; zero for the first of a run.</summary>
    public double StepS { get; internal set; }

    /// <summary>Whether this is the first scan of its run.</summary>
    public bool IsFirstOfRun { get; internal set; }

    /// <summary>The scan itself: raw readings, signals, actions, wall clock.</summary>
    public Scan Raw { get; internal set; } = new();

    /// <summary>The screened reading of a channel. A channel that is not fitted is Missing and never known.</summary>
    public ScreenedReading this[Channel channel]
    {
        get => _readings[(int)channel];
        internal set => _readings[(int)channel] = value;
    }

    /// <summary>A signal's level; null where it is not fitted or could not be read.</summary>
    public bool? this[Signal signal] => Raw[signal];
}
