using OnboardHeat.Core.Scans;

namespace OnboardHeat.Engine.Judging;

/// <summary>
/// Chooses between the fast and the slow period. Slow saves the bus and the battery on a parked van; fast is what
/// coolant loss needs. So slow has to be earned: the engine is known to be off, or not wired while the lines are, and
/// no line has moved for a while. One sign of movement is enough to be fast again.
/// </summary>
internal sealed class ScanPace(ScanPeriods periods)
{
    /// <summary>A line moved: eight steps of the probe, far above its noise of one or two (from the issue).</summary>
    public const double MovedK = 0.5;

    /// <summary>
    /// How long nothing may move before the van counts as parked: a hot circuit stays under pressure for minutes after
    /// a stop.
    /// </summary>
    public const double SettleS = 600;

    private static readonly Channel[] s_lines = [Channel.Flow, Channel.Return, Channel.EngineCoolant, Channel.Tray];

    private readonly double[] _restingC = [double.NaN, double.NaN, double.NaN, double.NaN];
    private double _movedAtS;

    /// <summary>The period after the last scan.</summary>
    public TimeSpan Period { get; private set; } = periods.Driving;

    /// <summary>Takes a scan and whether anything critical stands.</summary>
    public void Observe(Scan scan, bool isCritical)
    {
        var elapsedS = scan.Elapsed.TotalSeconds;
        var hasLine = false;
        for (var i = 0; i < s_lines.Length; i++)
        {
            var reading = scan[s_lines[i]];
            if (!reading.HasValue)
            {
                continue;
            }

            hasLine = true;
            if (double.IsNaN(_restingC[i]) || Math.Abs(reading.Value - _restingC[i]) >= MovedK)
            {
                _restingC[i] = reading.Value;
                _movedAtS = elapsedS;
            }
        }

        var engine = scan[Signal.EngineRunning];
        if (engine == true || isCritical)
        {
            _movedAtS = elapsedS;
        }

        var canTell = engine is not null || hasLine;
        Period = canTell && elapsedS - _movedAtS >= SettleS ? periods.Parked : periods.Driving;
    }
}
