using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Screening;
using OnboardHeat.Core.Tank;

namespace OnboardHeat.Core.Circuit;

/// <summary>
/// What every sign of the coolant circuit looks at: the last minutes of each probe, the engine, the van. Only believed
/// readings enter, so a bad probe's trace grows old and its signs fall silent. Reused from scan to scan.
/// </summary>
internal sealed class Loop(VanDescription van, LearntCircuit learnt)
{
    /// <summary>
    /// Air about the lines when nothing tells it; the middle of a touring year (common practice, no source).
    /// </summary>
    private const double AirPriorCelsius = 20;

    /// <summary>A window holds at least this many scans, whatever the period.</summary>
    private const double StepsInWindow = 4;

    private double _coldestLineCelsius = double.PositiveInfinity;

    public VanDescription Van { get; } = van;

    public LearntCircuit Learnt { get; } = learnt;

    public Trace Flow { get; } = new();

    public Trace Return { get; } = new();

    public Trace Bottom { get; } = new();

    public Trace Top { get; } = new();

    public Trace Air { get; } = new();

    public Trace Tray { get; } = new();

    public Trace Engine { get; } = new();

    /// <summary>Elapsed seconds of the newest scan.</summary>
    public double NowS { get; private set; }

    /// <summary>Seconds since the scan before, at most ten: a gap is no evidence.</summary>
    public double StepS { get; private set; }

    /// <summary>Smoothed scan period in seconds.</summary>
    public double PeriodS { get; private set; } = 2;

    /// <summary>Whether the engine runs, by signal or inferred; null when it cannot be told.</summary>
    public bool? IsEngineOn { get; set; }

    /// <summary>Whether no signal tells of the engine, so that the lines must.</summary>
    public bool IsEngineInferred { get; set; }

    /// <summary>Seconds since the engine was started; zero while it stands.</summary>
    public double EngineOnS { get; set; }

    /// <summary>Seconds since the engine was stopped; zero while it runs.</summary>
    public double EngineOffS { get; set; }

    /// <summary>Whether circulation was seen since the engine started: only what ran can stop.</summary>
    public bool IsProven { get; set; }

    /// <summary>Whether works on the circuit are under way: what it does then says nothing of what is normal.</summary>
    public bool IsInWorks { get; set; }

    /// <summary>Contacts: true while wet or low, null when not fitted.</summary>
    public bool? IsTrayWet { get; private set; }

    /// <summary>Level switch of the coolant.</summary>
    public bool? IsCoolantLow { get; private set; }

    /// <summary>
    /// Air about the lines, degrees Celsius: the probe by the tank, else no more than the coldest that a line has been.
    /// </summary>
    public double AirCelsius { get; private set; } = AirPriorCelsius;

    /// <summary>Heat that warms water and vessel by one kelvin, joules per kelvin.</summary>
    public double TankJPerK { get; } =
        (van.Tank.VolumeLitres * 4180) + (van.Tank.EffectiveVesselMassKg * Water.Materials.SteelJPerKgK);

    /// <summary>
    /// The hottest that believed probes on the coolant show, degrees Celsius; absolute zero when none is fresh.
    /// </summary>
    public double HottestCelsius => Math.Max(
        IsFresh(Flow) ? Flow.Newest : -273,
        Math.Max(IsFresh(Return) ? Return.Newest : -273, IsFresh(Engine) ? Engine.Newest : -273));

    /// <summary>A window of at least <paramref name="seconds"/> that holds enough scans.</summary>
    public double Window(double seconds) => Math.Max(seconds, StepsInWindow * PeriodS);

    /// <summary>Takes a scan.</summary>
    public void Observe(ScreenedScan scan)
    {
        NowS = scan.ElapsedS;
        StepS = Math.Min(scan.StepS, 10);
        PeriodS += scan.StepS is > 0 and < 60 ? 0.1 * (scan.StepS - PeriodS) : 0;
        Take(Flow, scan, Channel.Flow);
        Take(Return, scan, Channel.Return);
        Take(Bottom, scan, Channel.TankBottom);
        Take(Top, scan, Channel.TankTop);
        Take(Air, scan, Channel.Surroundings);
        Take(Tray, scan, Channel.Tray);
        Take(Engine, scan, Channel.EngineCoolant);
        IsTrayWet = scan[Signal.TrayWet];
        IsCoolantLow = scan[Signal.CoolantLow];
        foreach (var channel in (ReadOnlySpan<Channel>)[Channel.Flow, Channel.Return])
        {
            if (scan[channel].IsGood)
            {
                _coldestLineCelsius = Math.Min(_coldestLineCelsius, scan[channel].Value);
            }
        }

        AirCelsius = IsFresh(Air) && Air.TryRange(NowS - 180, NowS, out var lowest, out _)
            ? lowest
            : Math.Min(AirPriorCelsius, _coldestLineCelsius + 3);
    }

    /// <summary>Whether a probe's newest believed reading is recent enough to judge by.</summary>
    public bool IsFresh(Trace trace) => NowS - trace.NewestS <= Math.Max(12, 3 * PeriodS);

    /// <summary>Slope over the newest part of a trace. False when it is old or has gaps.</summary>
    public bool TrySlope(Trace trace, double windowS, out Slope slope, double delayS = 0)
    {
        slope = default;
        return (delayS > 0 || IsFresh(trace))
            && trace.TrySlope(NowS - delayS - Window(windowS), NowS - delayS, out slope);
    }

    private static void Take(Trace trace, ScreenedScan scan, Channel channel)
    {
        if (scan[channel].IsGood)
        {
            trace.Add(scan.ElapsedS, scan[channel].Value);
        }
    }
}
