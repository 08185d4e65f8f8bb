using OnboardHeat.Simulation.Physics;

namespace OnboardHeat.Simulation.Driving;

/// <summary>The van itself, without probes: everything warm in it, moved on together step by step.</summary>
internal sealed class VanBody
{
    /// <summary>Metal above which a driver has long stopped, degrees Celsius.</summary>
    private const double GivesUpCelsius = 135;

    /// <summary>Mixed water as this simulated household sets it, degrees Celsius.</summary>
    private const double MixedCelsius = 39;

    /// <summary>Water over the hoses in a ford: temperature and loss against still air.</summary>
    private const double FordCelsius = 9, FordFactor = 25;

    private readonly VanTraits _traits;
    private readonly Weather _weather;
    private readonly Driver _driver;
    private readonly int _elementLayer;
    private double _cabHeaterShare;
    private double _mixedLitresPerMinute;
    private bool _isElementWanted;
    private bool _isInFord;
    private double _sprayAirK;

    public VanBody(VanTraits traits, DrivePlan plan, ulong seed)
    {
        _traits = traits;
        _weather = new Weather(plan, new Chance(seed, 2));
        _weather.Step(0, 0, plan.AltitudeM);
        _driver = new Driver(traits.Engine, plan, new Chance(seed, 3));
        var outside = _weather.OutsideCelsius;
        var shelter = plan.ShelterCelsius ?? outside + 3;
        var engine = plan.EngineCelsius ?? outside;
        Tank = new LayeredTank(traits.Tank, Book);
        Tank.Fill(plan.TankBottomCelsius, plan.TankTopCelsius, plan.BoundaryShare);
        Engine = new Engine(traits.Engine, Book, engine, outside);
        Circuit = new CoolantCircuit(traits, Book, Engine, Tank, outside + (0.5 * (engine - outside)));
        Shelter = new Shelter(traits.Shelter, shelter);
        Tray = new Tray(traits.Shelter, shelter);
        Outlet = new OutletPipe(shelter);
        ColdPipe = new OutletPipe(shelter);
        _elementLayer = Math.Min(Tank.Count - 1, (int)(traits.Tank.ElementHeightShare * Tank.Count));
        Road = new RoadState(false, false, 0, 0, 0, plan.AltitudeM);
    }

    public HeatBook Book { get; } = new();

    public LayeredTank Tank { get; }

    public Engine Engine { get; }

    public CoolantCircuit Circuit { get; }

    public Shelter Shelter { get; }

    public Tray Tray { get; }

    public OutletPipe Outlet { get; }

    public OutletPipe ColdPipe { get; }

    public RoadState Road { get; private set; }

    public LegKind RoadKind => _driver.Leg.Kind;

    public bool IsElementOn { get; private set; }

    /// <summary>Hot water leaving the tank, litres a minute.</summary>
    public double HotLitresPerMinute { get; private set; }

    public double OutsideCelsius => _weather.OutsideCelsius;

    /// <summary>Air where the surroundings probe hangs.</summary>
    public double SurroundingsCelsius =>
        Shelter.Celsius + (_traits.Shelter.NearTankShare * (Tank.TopCelsius - Shelter.Celsius)) + _sprayAirK;

    /// <summary>Heat above 0 °C inside the border that the book keeps, joules.</summary>
    public double HeatJ => Tank.HeatJ + Circuit.HeatJ + Engine.HeatJ;

    /// <summary>Whether a long step loses nothing: engine off, no draw, nothing spouting.</summary>
    public bool IsQuiet(double stepS) => _mixedLitresPerMinute == 0 && Circuit.Leak is null && _driver.IsParked(stepS);

    public void Step(double stepS, double elapsedS)
    {
        _weather.Step(stepS, elapsedS, Road.AltitudeM);
        Road = _driver.Step(stepS, Engine.JacketCelsius);
        var outside = _weather.OutsideCelsius;
        var wind = _isInFord ? FordFactor : 1 + Math.Min(1.5, Road.SpeedKmh / 40);
        var underFloor = _isInFord ? FordCelsius : outside;
        var jacketJ = Circuit.Step(stepS, Road, underFloor, Shelter.Celsius, wind);
        Engine.Step(stepS, Road, jacketJ, outside, _cabHeaterShare, Shelter.Celsius);
        _driver.HasGivenUp |= Engine.MetalCelsius > GivesUpCelsius;
        Heat(stepS);
        Draw(stepS);
        var lossBefore = Book.TankLossJ;
        Tank.Stand(stepS, Shelter.Celsius, Road.SpeedKmh > 5);
        var tankW = (Book.TankLossJ - lossBefore) / stepS;
        Shelter.Step(stepS, outside, _weather.SunShare, Road.SpeedKmh > 5, tankW, Engine.HeaterW);
        Spray(stepS, outside);
    }

    public void Begin(in Happening happening)
    {
        switch (happening.Kind)
        {
            case HappeningKind.DoorsOpen:
                Shelter.AreDoorsOpen = true;
                break;
            case HappeningKind.CabHeater:
                _cabHeaterShare = happening.Size;
                break;
            case HappeningKind.SpaceHeating:
                Shelter.KeptCelsius = happening.Size;
                break;
            case HappeningKind.Draw:
                _mixedLitresPerMinute = happening.Size;
                break;
            case HappeningKind.Element:
                _isElementWanted = true;
                break;
            case HappeningKind.ValvesClosed:
                Circuit.ValveOpening = 0;
                break;
            case HappeningKind.AirLock or HappeningKind.PumpSlips:
                Circuit.FlowShare = happening.Size;
                break;
            case HappeningKind.ThermostatStuck:
                Engine.Thermostat.StuckShare = happening.Size;
                break;
            case HappeningKind.Ford:
                _isInFord = true;
                break;
            case HappeningKind.ColdTopUp:
                Engine.PourIn(happening.Size, OutsideCelsius);
                break;
            case HappeningKind.PullsOver:
                _driver.HasGivenUp = true;
                break;
            case HappeningKind.WaterInTray:
                Tray.Take(happening.Size, Tank.TopCelsius);
                break;
            case HappeningKind.HosesTakenOff:
                Circuit.Open(happening.Size);
                break;
            default:
                Circuit.Leak = LeakOf(happening) ?? Circuit.Leak;
                break;
        }
    }

    public void End(in Happening happening)
    {
        switch (happening.Kind)
        {
            case HappeningKind.DoorsOpen:
                Shelter.AreDoorsOpen = false;
                break;
            case HappeningKind.CabHeater:
                _cabHeaterShare = 0;
                break;
            case HappeningKind.SpaceHeating:
                Shelter.KeptCelsius = null;
                break;
            case HappeningKind.Draw:
                _mixedLitresPerMinute = 0;
                break;
            case HappeningKind.Element:
                _isElementWanted = false;
                break;
            case HappeningKind.ValvesClosed:
                Circuit.ValveOpening = 1;
                break;
            case HappeningKind.AirLock or HappeningKind.PumpSlips:
                Circuit.FlowShare = 1;
                break;
            case HappeningKind.ThermostatStuck:
                Engine.Thermostat.StuckShare = null;
                break;
            case HappeningKind.Ford:
                _isInFord = false;
                break;
            case HappeningKind.HosesTakenOff:
                Circuit.Close(OutsideCelsius);
                break;
        }
    }

    private static Leak? LeakOf(in Happening happening) => happening.Kind switch
    {
        HappeningKind.TankFlowHoseOff => new Leak(Joint.TankFlow, true, 1, 0),
        HappeningKind.TankReturnHoseOff => new Leak(Joint.TankReturn, true, 1, 0),
        HappeningKind.EngineFlowHoseOff => new Leak(Joint.EngineFlow, true, 1, 0),
        HappeningKind.EngineReturnHoseOff => new Leak(Joint.EngineReturn, true, 1, 0),
        HappeningKind.HoseSplit => new Leak(Joint.TankFlow, false, happening.Size, 0),
        HappeningKind.Weep => new Leak(Joint.TankReturn, false, 0, happening.Size),
        _ => null,
    };

    private void Heat(double stepS)
    {
        // The element's own thermostat with 4 K between off and on.
        var celsius = Tank.Celsius[_elementLayer];
        var limit = _traits.Tank.ElementCelsius - (IsElementOn ? 0 : 4);
        IsElementOn = _isElementWanted && celsius < limit;
        if (IsElementOn)
        {
            Book.In(_traits.Tank.ElementW * stepS);
            Tank.AddHeat(_elementLayer, _traits.Tank.ElementW * stepS);
        }
    }

    private void Draw(double stepS)
    {
        var isRunning = _mixedLitresPerMinute > 0;
        HotLitresPerMinute = 0;
        if (isRunning)
        {
            Tank.Settle();
            HotLitresPerMinute =
                Mixing.HotShare(Tank.TopCelsius, _traits.Tank.ColdCelsius, MixedCelsius) * _mixedLitresPerMinute;
            Tank.Draw(HotLitresPerMinute / 60 * stepS, _traits.Tank.ColdCelsius);
        }

        Outlet.Step(stepS, isRunning, Tank.TopCelsius, Shelter.Celsius);
        ColdPipe.Step(stepS, isRunning, _traits.Tank.ColdCelsius, Shelter.Celsius);
    }

    private void Spray(double stepS, double outsideCelsius)
    {
        var litres = Circuit.SprayLitres;
        if (litres > 0)
        {
            Tray.Take(litres * _traits.Shelter.SprayOnTrayShare, Circuit.SprayCelsius);
        }

        // Steam and spray warm the air at the probe within seconds, and a full spout more than a drip.
        var perMinute = litres / stepS * 60;
        var target = _traits.Shelter.SprayOnAirShare * (Circuit.SprayCelsius - Shelter.Celsius) * Math.Min(
            1, perMinute / 4);
        _sprayAirK += (litres > 0 ? target - _sprayAirK : -_sprayAirK) * stepS / (20 + stepS);
        Tray.Step(stepS, Shelter.Celsius, outsideCelsius);
    }
}
