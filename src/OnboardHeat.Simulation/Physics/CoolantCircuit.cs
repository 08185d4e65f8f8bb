namespace OnboardHeat.Simulation.Physics;

/// <summary>
/// The tank's branch of the coolant circuit: pump, two lines, coil, and the ways coolant can be lost from it. Driven by
/// the pump while the engine turns, and by the warm tank itself when it stands and the valves are open.
/// </summary>
internal sealed class CoolantCircuit
{
    /// <summary>
    /// A hose that is off spouts more than the coil let through; an open end at the engine more still.
    /// </summary>
    private const double SpoutFactor = 1.3, EngineSpoutFactor = 1.6;

    /// <summary>
    /// The pump draws air below the first share of coolant in the engine and nothing but air below the second.
    /// </summary>
    private const double AirFromFill = 0.8, AirOnlyFill = 0.45;

    /// <summary>Pace at which a line runs empty after its joint is off, litres a second.</summary>
    private const double RunOutLitresPerS = 0.02;

    /// <summary>The pump's flow follows speed and valves with this lag, seconds.</summary>
    private const double FlowLagS = 2;

    private readonly VanTraits _traits;
    private readonly HeatBook _book;
    private readonly Engine _engine;
    private double _pumpedLitresPerS;

    public CoolantCircuit(VanTraits traits, HeatBook book, Engine engine, LayeredTank tank, double lineCelsius)
    {
        _traits = traits;
        _book = book;
        _engine = engine;
        FlowLine = new CoolantLine(traits.FlowLine, book, lineCelsius);
        ReturnLine = new CoolantLine(traits.ReturnLine, book, lineCelsius);
        Coil = new Coil(traits.Coil, tank);
        FlowSpot = new PipeSpot(traits.FlowSpot, lineCelsius);
        ReturnSpot = new PipeSpot(traits.ReturnSpot, lineCelsius);
        BottleLitres = traits.Engine.BottleLitres;
    }

    public CoolantLine FlowLine { get; }

    public CoolantLine ReturnLine { get; }

    public Coil Coil { get; }

    public PipeSpot FlowSpot { get; }

    public PipeSpot ReturnSpot { get; }

    /// <summary>Opening of the isolation valves, 0 to 1.</summary>
    public double ValveOpening { get; set; } = 1;

    /// <summary>Share of the flow left by an air lock or a slipping pump.</summary>
    public double FlowShare { get; set; } = 1;

    /// <summary>Where coolant gets out; null while all is tight.</summary>
    public Leak? Leak { get; set; }

    /// <summary>Coolant in the expansion bottle, litres.</summary>
    public double BottleLitres { get; private set; }

    public double LostLitres { get; private set; }

    /// <summary>Coolant passing the coil, litres a minute; negative when a warm tank drives it backwards.</summary>
    public double CoilLitresPerMinute { get; private set; }

    /// <summary>Coolant that came out at the tank in the last step, litres, and how hot.</summary>
    public double SprayLitres { get; private set; }

    public double SprayCelsius { get; private set; }

    /// <summary>Heat above 0 °C in lines and coil, joules.</summary>
    public double HeatJ => FlowLine.HeatJ + ReturnLine.HeatJ + Coil.HeatJ;

    /// <summary>
    /// A step. Gives the heat brought to the engine's jacket less what was taken from it, joules above 0 °C.
    /// </summary>
    public double Step(double stepS, in RoadState road, double outsideCelsius, double shelterCelsius, double windFactor)
    {
        var wanted = road.IsEngineOn ? PumpLitresPerS(road.Rpm) : 0;
        _pumpedLitresPerS += (wanted - _pumpedLitresPerS) * stepS / (FlowLagS + stepS);
        SprayLitres = 0;
        var isPumped = _pumpedLitresPerS > 1e-4;
        var jacketJ = isPumped || Leak is not null
            ? Forwards(stepS, outsideCelsius, windFactor)
            : ByItself(stepS, outsideCelsius, windFactor);
        Warm(stepS, shelterCelsius, windFactor);
        return jacketJ;
    }

    /// <summary>
    /// A hose is taken off at the tank for works, with the engine cold enough to touch: both lines run out and some of
    /// the engine's coolant with them.
    /// </summary>
    public void Open(double litresOfEngine)
    {
        Leak = new Leak(Joint.TankFlow, true, 1, 0);
        LostLitres += _engine.RunOut(litresOfEngine);
    }

    /// <summary>The hose is on again, and everything filled up from a can.</summary>
    public void Close(double canCelsius)
    {
        Leak = null;
        _engine.FillUp(canCelsius);
        FlowLine.FillUp(canCelsius);
        ReturnLine.FillUp(canCelsius);
        BottleLitres = _traits.Engine.BottleLitres;
    }

    private double PumpLitresPerS(double rpm)
    {
        var engine = _traits.Engine;
        var shape = engine.IdleFlowShare + ((1 - engine.IdleFlowShare) * (rpm - 800) / 1200);
        var air = Math.Clamp((_engine.Fill - AirOnlyFill) / (AirFromFill - AirOnlyFill), 0, 1);
        return engine.TankFlowLitresPerMinute / 60 * Math.Max(0, shape) * ValveOpening * FlowShare * air;
    }

    private double Forwards(double stepS, double outsideCelsius, double windFactor)
    {
        var pumped = _pumpedLitresPerS;
        var off = Leak is { IsOff: true } ? Leak.At : (Joint?)null;
        var leaving = OutLitresPerS(pumped);
        if (off is not null)
        {
            RunOut(stepS, off.Value, pumped);
        }

        var flow = off switch { Joint.EngineFlow => 0, Joint.TankFlow => pumped * SpoutFactor, _ => pumped };
        var coil = off is Joint.EngineFlow or Joint.TankFlow ? 0
            : Leak is { IsOff: false, At: Joint.TankFlow } ? Math.Max(0, flow - leaving) : flow;
        var back = off is Joint.EngineFlow or Joint.TankFlow or Joint.TankReturn ? 0
            : Leak is { IsOff: false, At: Joint.TankReturn } ? Math.Max(0, coil - leaving) : coil;
        var jacketCelsius = _engine.JacketCelsius;
        var atTank = FlowLine.Pass(stepS, flow, jacketCelsius, isTowardsTank: true, outsideCelsius, windFactor);
        var fromCoil = Coil.Pass(stepS, coil, atTank, isForwards: true);
        var atEngine = ReturnLine.Pass(stepS, back, fromCoil, isTowardsTank: false, outsideCelsius, windFactor);
        CoilLitresPerMinute = coil * 60;

        // What leaves for good: its heat is booked at the place where it comes out; bottle and jacket make it up.
        var returned = off == Joint.EngineReturn ? 0
            : Leak is { IsOff: false, At: Joint.EngineReturn } ? Math.Max(0, back - leaving) : back;
        var drawn = flow + (Leak is { At: Joint.EngineFlow } ? leaving : 0);
        var lost = (drawn - returned) * stepS;
        var heat = Fluids.CoolantJPerLitreK;
        var jacketJ = heat * stepS * ((returned * atEngine) - (drawn * jacketCelsius));
        if (lost > 0)
        {
            var celsius = Leak!.At switch
            {
                Joint.EngineFlow => jacketCelsius,
                Joint.TankFlow => atTank,
                Joint.TankReturn => fromCoil,
                _ => atEngine,
            };
            _book.Out(heat * lost * celsius);
            jacketJ += MakeUp(lost, outsideCelsius);
            if (Leak.At is Joint.TankFlow or Joint.TankReturn)
            {
                SprayLitres = lost;
                SprayCelsius = celsius;
            }
        }

        return jacketJ;
    }

    private double OutLitresPerS(double pumped) => Leak switch
    {
        null => 0,
        { IsOff: true, At: Joint.EngineFlow } => pumped * EngineSpoutFactor,
        { IsOff: true } => pumped,
        { } leak => Math.Min(pumped, (leak.ShareOfFlow * pumped) + (leak.LitresPerMinute / 60)),
    };

    /// <summary>
    /// The bottle gives first, then the engine's own coolant. Gives the heat that the bottle's coolant brings, joules.
    /// </summary>
    private double MakeUp(double litres, double outsideCelsius)
    {
        LostLitres += litres;
        var fromBottle = Math.Min(BottleLitres, litres);
        BottleLitres -= fromBottle;
        var bottleCelsius = outsideCelsius + (0.4 * (_engine.JacketCelsius - outsideCelsius));
        var broughtJ = fromBottle * Fluids.CoolantJPerLitreK * bottleCelsius;
        _book.In(broughtJ);
        _engine.Lose(litres - fromBottle);
        return broughtJ;
    }

    /// <summary>Lines that nothing is pumped into any more run out, down to what their sags hold.</summary>
    private void RunOut(double stepS, Joint off, double pumped)
    {
        var litres = RunOutLitresPerS * stepS;
        var isFlowLineDead = off == Joint.EngineFlow || pumped < 0.002;
        var isReturnLineDead = off != Joint.EngineReturn || pumped < 0.002;
        if (isFlowLineDead && FlowLine.Fill > _traits.LineHoldsShare)
        {
            FlowLine.Drain(litres);
        }

        if (isReturnLineDead && ReturnLine.Fill > _traits.LineHoldsShare)
        {
            ReturnLine.Drain(litres);
        }
    }

    /// <summary>
    /// Standing with open valves: the warmer of tank and lines drives a slow flow. Warm coolant rises out of the coil's
    /// upper port.
    /// </summary>
    private double ByItself(double stepS, double outsideCelsius, double windFactor)
    {
        var far = (_engine.JacketCelsius + FlowLine.MiddleCelsius + ReturnLine.MiddleCelsius) / 3;
        var driveK = Coil.MeanCelsius - far;
        var perMinute =
            _traits.Engine.SelfFlowLitresPerMinuteK * driveK * ValveOpening * FlowShare * (driveK > 0 ? 1 : -0.4);
        var isForwards = driveK > 0 != _traits.Coil.IsFedFromTop;
        var flow = perMinute / 60;
        CoilLitresPerMinute = isForwards ? perMinute : -perMinute;
        var jacketCelsius = _engine.JacketCelsius;
        var first = isForwards ? FlowLine : ReturnLine;
        var last = isForwards ? ReturnLine : FlowLine;
        var atTank = first.Pass(stepS, flow, jacketCelsius, isTowardsTank: true, outsideCelsius, windFactor);
        var fromCoil = Coil.Pass(stepS, flow, atTank, isForwards);
        var atEngine = last.Pass(stepS, flow, fromCoil, isTowardsTank: false, outsideCelsius, windFactor);
        return Fluids.CoolantJPerLitreK * flow * stepS * (atEngine - jacketCelsius);
    }

    private void Warm(double stepS, double shelterCelsius, double windFactor)
    {
        var wind = 1 + (0.2 * (windFactor - 1));
        var flow = Math.Abs(CoilLitresPerMinute);
        var isFlowOff = Leak is { IsOff: true, At: Joint.TankFlow };
        var isReturnOff = Leak is { IsOff: true, At: Joint.TankReturn };
        var flowPlace = new SpotPlace(shelterCelsius, wind, Coil.FlowPortCelsius, SprayCelsius);
        var returnPlace = flowPlace with { TankCelsius = Coil.ReturnPortCelsius };
        var spray = SprayLitres > 0 ? _traits.SprayOnSpotWPerK : 0;
        FlowSpot.SprayWPerK = isFlowOff ? spray : 0;
        ReturnSpot.SprayWPerK = isReturnOff ? spray : 0;

        // On the tank's side of a joint that is off there is only the stub; on the hose's side the coolant still comes,
        // while it lasts.
        var flowAtSpot = isFlowOff && !_traits.FlowSpot.IsOnTankSide ? SprayLitres / stepS * 60 : flow;
        var flowFill = isFlowOff && _traits.FlowSpot.IsOnTankSide ? 0 : FlowLine.Fill;
        var returnAtSpot = isReturnOff && !_traits.ReturnSpot.IsOnTankSide ? 0 : flow;
        var returnFill = isReturnOff && !_traits.ReturnSpot.IsOnTankSide ? 0 : ReturnLine.Fill;
        var fromCoil = flow > 0.3 || isReturnOff ? Coil.ReturnPortCelsius : ReturnLine.TankEndCelsius;
        FlowSpot.Step(stepS, flowAtSpot, flowFill, FlowLine.TankEndCelsius, flowPlace);
        ReturnSpot.Step(stepS, returnAtSpot, returnFill, fromCoil, returnPlace);
    }
}
