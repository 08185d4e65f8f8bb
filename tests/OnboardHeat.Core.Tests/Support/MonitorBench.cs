using OnboardHeat.Core.Circuit;
using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Watch;

namespace OnboardHeat.Core.Tests.Support;

/// <summary>
/// A whole monitor on the bench. Readings and signals stay as set from scan to scan; changes are collected.
/// </summary>
internal sealed class MonitorBench
{
    private readonly Scan _scan = new();
    private readonly List<PersonAction> _actions = [];
    private double _elapsedS = -1;

    public MonitorBench(Channel[] channels, Signal[] signals, KeptState? kept = null, params CircuitPart[] parts)
    {
        var van = new VanDescription
        {
            Fitted = new FittedSet(channels, signals),
            Circuit = new CircuitDescription { Parts = parts },
        };
        Monitor = new Monitor(van, kept ?? KeptState.Fresh, ForecastTiming.WhenAsked);
    }

    public Monitor Monitor { get; }

    public double PeriodS { get; init; } = 2;

    public Scan Scan => _scan;

    /// <summary>Every change so far as <c>+alarm/subject</c> or <c>-alarm/subject</c>.</summary>
    public List<string> Changes { get; } = [];

    public Picture? Last { get; private set; }

    public MonitorBench Set(Channel channel, double? celsius)
    {
        _scan[channel] = celsius is { } value ? Reading.Of(value) : Reading.None;
        return this;
    }

    public MonitorBench Set(Signal signal, bool? level)
    {
        _scan[signal] = level;
        return this;
    }

    public MonitorBench Do(ActionKind kind, string target = "")
    {
        _actions.Add(new PersonAction(kind, target, ""));
        return this;
    }

    /// <summary>Scans for a time; each scan may be changed before it is taken.</summary>
    public MonitorBench Run(double seconds, Action<double>? before = null)
    {
        for (var s = 0.0; s < seconds; s += PeriodS)
        {
            _elapsedS = _elapsedS < 0 ? 0 : _elapsedS + PeriodS;
            before?.Invoke(s);
            _scan.Elapsed = TimeSpan.FromSeconds(_elapsedS);
            _scan.Actions = [.. _actions];
            _actions.Clear();
            Last = Monitor.Observe(_scan);
            foreach (var change in Last.Changes)
            {
                Changes.Add((change.IsRaised ? "+" : "-") + (change.Subject.Length == 0
                    ? change.Definition.Name
                    : $"{change.Definition.Name}/{change.Subject}"));
            }
        }

        return this;
    }

    /// <summary>The alarm of this path as it stands, or null.</summary>
    public AlarmSnapshot? Alarm(string path) => Last!.Alarms.SingleOrDefault(alarm => alarm.Path == path);
}
