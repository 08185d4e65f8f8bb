using OnboardHeat.Core.Scans;
using OnboardHeat.Simulation.Driving;

namespace OnboardHeat.Simulation.Sensing;

/// <summary>All probes and signals of a van: what the daemon gets to see of it.</summary>
internal sealed class Instruments
{
    /// <summary>Level in the bottle below which the switch closes, a share, and how far bends slosh it.</summary>
    private const double LowLevelShare = 0.35, SloshShare = 0.05;

    private readonly VanTraits _traits;
    private readonly VanBody _body;
    private readonly Chance _chance;
    private readonly SimulatedProbe[] _probes = new SimulatedProbe[Channels.Count];
    private readonly int[] _wiring = new int[Channels.Count];
    private bool _isBusLost;
    private bool _wasCranking;
    private bool _isBouncing;
    private bool? _engineSignalStuck;

    public Instruments(VanTraits traits, VanBody body, Chance chance)
    {
        _traits = traits;
        _body = body;
        _chance = chance;
        for (var i = 0; i < _probes.Length; i++)
        {
            var step = (Channel)i == Channel.EngineCoolant ? SimulatedProbe.VehicleStepK : SimulatedProbe.RegisterStepK;
            _probes[i] = new SimulatedProbe(traits.Probes[i], step);
            _wiring[i] = i;
        }

        Follow(1);
    }

    /// <summary>Lets every fitted probe follow its place for a step.</summary>
    public void Follow(double stepS)
    {
        var air = _body.SurroundingsCelsius;
        for (var i = 0; i < _probes.Length; i++)
        {
            if (_traits.Fitted.Has((Channel)i))
            {
                _probes[i].Follow(stepS, PlaceCelsius((Channel)i), air);
            }
        }

        if (_body.Road.IsCranking && !_wasCranking)
        {
            _isBusLost = _chance.Happens(_traits.CrankLosesBusShare);
        }

        _wasCranking = _body.Road.IsCranking;
        _isBusLost &= _wasCranking;
    }

    /// <summary>Fills a scan with what probes and signals give now.</summary>
    public void Fill(Scan scan)
    {
        scan.Clear();
        for (var i = 0; i < _probes.Length; i++)
        {
            var channel = (Channel)i;
            if (_traits.Fitted.Has(channel))
            {
                // After a dip of the supply half of the probes have not measured yet and show their power-on value.
                scan[channel] = !_isBusLost || channel == Channel.EngineCoolant ? _probes[_wiring[i]].Read(_chance)
                    : _chance.Happens(0.5) ? Reading.Of(85)
                    : Reading.None;
            }
        }

        foreach (var signal in Signals.All)
        {
            if (_traits.Fitted.Has(signal))
            {
                scan[signal] = Level(signal);
            }
        }
    }

    public void Begin(in Happening happening)
    {
        var probe = _probes[(int)happening.On];
        switch (happening.Kind)
        {
            case >= HappeningKind.ProbeMissing and <= HappeningKind.ProbeStuck:
                probe.Trouble = happening.Kind;
                break;
            case HappeningKind.ProbeJump:
                probe.JumpK = happening.Size;
                break;
            case HappeningKind.ProbeLoose:
                probe.ContactShare = happening.Size;
                break;
            case HappeningKind.ProbesSwapped:
                Exchange(happening.On);
                break;
            case HappeningKind.EngineSignalStuck:
                _engineSignalStuck = happening.Size > 0.5;
                break;
            case HappeningKind.EngineSignalBounces:
                _isBouncing = true;
                break;
        }
    }

    public void End(in Happening happening)
    {
        var probe = _probes[(int)happening.On];
        switch (happening.Kind)
        {
            case >= HappeningKind.ProbeMissing and <= HappeningKind.ProbeStuck:
                probe.Trouble = null;
                break;
            case HappeningKind.ProbeJump:
                probe.JumpK = 0;
                break;
            case HappeningKind.ProbeLoose:
                probe.ContactShare = 1;
                break;
            case HappeningKind.ProbesSwapped:
                Exchange(happening.On);
                break;
            case HappeningKind.EngineSignalStuck:
                _engineSignalStuck = null;
                break;
            case HappeningKind.EngineSignalBounces:
                _isBouncing = false;
                break;
        }
    }

    private void Exchange(Channel on)
    {
        var with = on switch
        {
            Channel.TankTop => Channel.TankBottom,
            Channel.TankBottom => Channel.TankTop,
            Channel.Flow => Channel.Return,
            Channel.Return => Channel.Flow,
            Channel.Tray => Channel.Surroundings,
            _ => Channel.Tray,
        };
        (_wiring[(int)on], _wiring[(int)with]) = (_wiring[(int)with], _wiring[(int)on]);
    }

    private bool Level(Signal signal) => signal switch
    {
        Signal.EngineRunning => _isBouncing ? _chance.Happens(0.5)
            : _engineSignalStuck ?? (_body.Road.IsCranking ? _chance.Happens(0.5) : _body.Road.IsEngineOn),
        Signal.TrayWet => _body.Tray.IsWet,
        Signal.CoolantLow => _body.Circuit.BottleLitres / _traits.Engine.BottleLitres
            < LowLevelShare + (_body.Road.SpeedKmh > 5 ? SloshShare * _chance.Jitter() : 0),
        Signal.ValvesClosed => _body.Circuit.ValveOpening < 0.5,
        _ => _body.IsElementOn,
    };

    private double PlaceCelsius(Channel channel) => channel switch
    {
        Channel.TankTop => _body.Tank.CelsiusAt(_traits.TopProbeHeightShare),
        Channel.TankMiddle => _body.Tank.CelsiusAt(_traits.MiddleProbeHeightShare),
        Channel.TankBottom => _body.Tank.CelsiusAt(_traits.BottomProbeHeightShare),
        Channel.Flow => _body.Circuit.FlowSpot.Celsius,
        Channel.Return => _body.Circuit.ReturnSpot.Celsius,
        Channel.Surroundings => _body.SurroundingsCelsius,
        Channel.Tray => _body.Tray.Celsius,
        Channel.Outlet => _body.Outlet.Celsius,
        Channel.ColdSupply => _body.ColdPipe.Celsius,
        _ => _body.Engine.JacketCelsius,
    };
}
