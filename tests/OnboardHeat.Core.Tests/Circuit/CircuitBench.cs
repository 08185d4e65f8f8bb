using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Tests.Support;

namespace OnboardHeat.Core.Tests.Circuit;

/// <summary>
/// A van by closed forms, for stories whose physics can be checked by hand: 24 litres, a coil of 50 W/K, flow held by
/// the thermostat, return half way to the tank's mean of drive; after a failure every line falls exponentially to the
/// air.
/// </summary>
internal sealed class CircuitBench
{
    private const double TankJPerK = 103_000, CoilWPerK = 50, AirCelsius = 16;

    private readonly MonitorBench _bench;
    private readonly bool _hasSignal;
    private int _reads;
    private double _tank = 35, _flow = 50, _return = 45, _air = AirCelsius, _tray = AirCelsius;

    public CircuitBench(KeptState? kept = null, bool hasSignal = true, bool hasTray = true, double periodS = 2)
    {
        _hasSignal = hasSignal;
        Channel[] channels = hasTray
            ? [Channel.TankTop, Channel.TankBottom, Channel.Flow, Channel.Return, Channel.Surroundings, Channel.Tray]
            : [Channel.TankTop, Channel.TankBottom, Channel.Flow, Channel.Return];
        _bench = new MonitorBench(channels, hasSignal ? [Signal.EngineRunning] : [], kept) { PeriodS = periodS };
    }

    public List<string> Changes => _bench.Changes;

    public MonitorBench Bench => _bench;

    /// <summary>What the engine holds, degrees Celsius.</summary>
    public double EngineCelsius { get; set; } = 86;

    public bool IsEngineOn { get; set; } = true;

    /// <summary>What the contact reports; null: the truth.</summary>
    public bool? Signalled { get; set; }

    public bool IsCirculating { get; set; } = true;

    /// <summary>Time constant of the lines once nothing passes, seconds.</summary>
    public double LineTauS { get; set; } = 2400;

    /// <summary>Time constant with which cold water runs over both hoses, seconds; zero: none does.</summary>
    public double ChillS { get; set; }

    /// <summary>Whether hot coolant sprays on tray and air.</summary>
    public bool IsSpraying { get; set; }

    /// <summary>
    /// What a drip, or the sun, brings the tray to above the air, kelvin; and the sun the air, kelvin.
    /// </summary>
    public double DripK { get; set; }

    public double SunK { get; set; }

    public bool IsFlowStuck { get; set; }

    public bool IsTrayGone { get; set; }

    /// <summary>By how much the tray's probe reads too high, kelvin.</summary>
    public double TrayJumpK { get; set; }

    public CircuitBench Run(double seconds)
    {
        _bench.Run(seconds, _ => Step(_bench.PeriodS));
        return this;
    }

    public CircuitBench WarmedUp() => Run(1800);

    private void Step(double stepS)
    {
        for (var s = 0.0; s < stepS; s++)
        {
            if (IsEngineOn && IsCirculating)
            {
                var heatW = CoilWPerK * (_flow - _tank);
                _tank += heatW / TankJPerK;
                _flow += (EngineCelsius - _flow) / 40;
                _return += ((_flow - (0.4 * (_flow - _tank))) - _return) / 15;
            }
            else
            {
                _flow -= (_flow - AirCelsius) / LineTauS;
                _return -= (_return - AirCelsius) / LineTauS;
            }

            if (ChillS > 0)
            {
                _flow -= (_flow - AirCelsius) / ChillS;
                _return -= (_return - AirCelsius) / ChillS;
            }

            _tank -= 0.9 * (_tank - AirCelsius) / TankJPerK;
            _tray += IsSpraying ? (60 - _tray) / 15 : (AirCelsius + DripK - _tray) / (DripK > 0 ? 60 : 300);
            _air += IsSpraying ? (38 - _air) / 40 : (AirCelsius + SunK - _air) / (SunK > 0 ? 60 : 400);
        }

        _bench.Set(Channel.TankTop, Read(_tank)).Set(Channel.TankBottom, Read(_tank)).Set(Channel.Return, Read(_return))
            .Set(Channel.Surroundings, Read(_air)).Set(Channel.Tray, IsTrayGone ? null : Read(_tray + TrayJumpK))
            .Set(Signal.EngineRunning, _hasSignal ? Signalled ?? IsEngineOn : null);
        if (!IsFlowStuck)
        {
            _bench.Set(Channel.Flow, Read(_flow));
        }
    }

    /// <summary>
    /// A probe's sixteenths of a kelvin, with the flicker of the last one that every live probe shows.
    /// </summary>
    private double Read(double celsius) => Math.Round((celsius + (0.06 * Math.Sin(++_reads * 2.4))) * 16) / 16;
}
