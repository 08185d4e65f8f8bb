using OnboardHeat.Core.Quantities;
using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Water;
using OnboardHeat.Simulation.Driving;
using OnboardHeat.Simulation.Physics;
using OnboardHeat.Simulation.Sensing;

namespace OnboardHeat.Simulation;

/// <summary>
/// A van that follows a plan and is looked at by its probes. Everything comes from one seed: the same van, plan and
/// seed give the same scans. Beside each scan stands the truth that the probes see only dimly.
/// </summary>
public sealed class SimulatedVan
{
    /// <summary>Longest step while something moves, and while the van stands with nothing going on; seconds.</summary>
    private const double LivelyStepS = 1, QuietStepS = 10;

    private readonly DrivePlan _plan;
    private readonly VanTraits _traits;
    private readonly VanBody _body;
    private readonly Instruments _instruments;
    private readonly List<Happening> _coming;
    private readonly List<Happening> _running = [];
    private readonly List<PersonAction> _said = [];
    private readonly double _lengthS;
    private LayeredTank? _tried;
    private int _nextHappening;
    private int _nextAction;
    private double _elapsedS;
    private bool _hasBegun;

    /// <summary>A van at the start of its plan.</summary>
    public SimulatedVan(VanTraits traits, DrivePlan plan, int seed)
    {
        ArgumentNullException.ThrowIfNull(traits);
        ArgumentNullException.ThrowIfNull(plan);
        if (plan.Legs.Count == 0)
        {
            throw new ArgumentException("A plan has at least one leg.", nameof(plan));
        }

        _traits = traits;
        _plan = plan;
        _lengthS = plan.LengthS;
        _coming = [.. plan.Happenings];
        _body = new VanBody(traits, plan, (ulong)seed);
        _instruments = new Instruments(traits, _body, new Chance((ulong)seed, 1));
    }

    /// <summary>What the probes gave last. Reused: whoever keeps it copies it.</summary>
    public Scan Scan { get; } = new() { IsUtcTrusted = true };

    /// <summary>What was really so. Reused.</summary>
    public Truth Truth { get; } = new();

    /// <summary>The plan being followed.</summary>
    public DrivePlan Plan => _plan;

    /// <summary>The van.</summary>
    public VanTraits Traits => _traits;

    /// <summary>Goes on to the next scan; false when the plan is at its end. The first scan is at zero.</summary>
    public bool Step()
    {
        var next = _hasBegun ? _elapsedS + _plan.ScanPeriodS : 0;
        if (next > _lengthS)
        {
            return false;
        }

        _hasBegun = true;
        Begin();
        while (_elapsedS < next)
        {
            var left = next - _elapsedS;
            var step = Math.Min(left, _body.IsQuiet(QuietStepS) ? QuietStepS : LivelyStepS);
            _elapsedS = step == left ? next : _elapsedS + step;
            _body.Step(step, _elapsedS);
            _instruments.Follow(step);
            Begin();
        }

        Look();
        return true;
    }

    /// <summary>
    /// Lets something happen that was not in the plan, such as people who answer an alarm; never before now.
    /// </summary>
    public void LetHappen(Happening happening)
    {
        happening = happening with { AtS = Math.Max(happening.AtS, _elapsedS) };
        var place = _nextHappening;
        while (place < _coming.Count && _coming[place].AtS <= happening.AtS)
        {
            place++;
        }

        _coming.Insert(place, happening);
    }

    /// <summary>Lets a person say something; it comes with the next scan.</summary>
    public void Say(PersonAction action) => _said.Add(action);

    /// <summary>
    /// How long mixed water lasts from now with heating off, minutes, until the mix falls 1 K below its set point: by
    /// drawing from a copy of the layers in steps of half a second.
    /// </summary>
    public double TrueShowerMinutes(double mixedCelsius, double flowLitresPerMinute)
    {
        const double StepS = 0.5, LongestS = 3 * 3600;
        _tried ??= new LayeredTank(_traits.Tank, new HeatBook());
        _tried.CopyFrom(_body.Tank);
        var cold = _traits.Tank.ColdCelsius;
        for (var elapsed = 0.0; elapsed < LongestS; elapsed += StepS)
        {
            if (_tried.TopCelsius < mixedCelsius - 1)
            {
                return elapsed / 60;
            }

            var litres = Mixing.HotShare(_tried.TopCelsius, cold, mixedCelsius) * flowLitresPerMinute / 60 * StepS;
            _tried.Draw(litres, cold);
            _tried.Stand(StepS, _body.Shelter.Celsius, isTravelling: false);
        }

        return LongestS / 60;
    }

    /// <summary>
    /// Heat inside the border of the energy balance, joules above 0 °C, and what crossed the border so far.
    /// </summary>
    internal (double HeldJ, double InJ, double OutJ) Balance => (_body.HeatJ, _body.Book.InJ, _body.Book.OutJ);

    /// <summary>The van without its probes, for tests of the physics.</summary>
    internal VanBody Body => _body;

    private void Begin()
    {
        for (var i = _running.Count - 1; i >= 0; i--)
        {
            if (_running[i].AtS + _running[i].LengthS <= _elapsedS)
            {
                _body.End(_running[i]);
                _instruments.End(_running[i]);
                _running.RemoveAt(i);
            }
        }

        while (_nextHappening < _coming.Count && _coming[_nextHappening].AtS <= _elapsedS)
        {
            var happening = _coming[_nextHappening++];
            _body.Begin(happening);
            _instruments.Begin(happening);
            if (happening.IsCoolantLoss)
            {
                Truth.Failure ??= happening;
            }

            if (double.IsFinite(happening.LengthS))
            {
                _running.Add(happening);
            }
        }
    }

    private void Look()
    {
        _instruments.Fill(Scan);
        Scan.Elapsed = TimeSpan.FromSeconds(_elapsedS);
        Scan.Utc = _plan.Start.AddSeconds(_elapsedS);
        while (_nextAction < _plan.Actions.Count && _plan.Actions[_nextAction].AtS <= _elapsedS)
        {
            _said.Add(_plan.Actions[_nextAction++].Action);
        }

        if (_said.Count > 0)
        {
            Scan.Actions = [.. _said];
            _said.Clear();
        }

        var tank = _body.Tank;
        double sum = 0, stored = 0;
        var layer = new Litres(_traits.Tank.VolumeLitres / tank.Count);
        var cold = new Celsius(_traits.Tank.ColdCelsius);
        foreach (var celsius in tank.Celsius)
        {
            sum += celsius;
            stored += WaterProperties.HeatOf(layer, new Celsius(celsius), cold).Value;
        }

        Truth.ElapsedS = _elapsedS;
        Truth.MeanCelsius = sum / tank.Count;
        Truth.TopCelsius = tank.TopCelsius;
        Truth.BottomCelsius = tank.Celsius[0];
        Truth.StoredJ = stored
            + (_traits.Tank.SteelKg * Fluids.SteelJPerKgK * (Truth.MeanCelsius - _traits.Tank.ColdCelsius));
        Truth.CoilW = _body.Circuit.Coil.GivenW;
        Truth.ElementW = _body.IsElementOn ? _traits.Tank.ElementW : 0;
        Truth.LossWPerK = _traits.Tank.LossWPerK;
        Truth.CoilWPerK = _traits.Coil.ConductanceWPerK;
        Truth.SurroundingsCelsius = _body.SurroundingsCelsius;
        Truth.OutsideCelsius = _body.OutsideCelsius;
        Truth.EngineCelsius = _body.Engine.JacketCelsius;
        Truth.CoilLitresPerMinute = _body.Circuit.CoilLitresPerMinute;
        Truth.DrawLitresPerMinute = _body.HotLitresPerMinute;
        Truth.CoolantLostLitres = _body.Circuit.LostLitres;
        Truth.SpeedKmh = _body.Road.SpeedKmh;
        Truth.AltitudeM = _body.Road.AltitudeM;
        Truth.IsEngineOn = _body.Road.IsEngineOn;
        Truth.AreValvesClosed = _body.Circuit.ValveOpening < 0.5;
        Truth.Road = _body.RoadKind;
    }
}
