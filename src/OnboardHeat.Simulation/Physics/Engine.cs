namespace OnboardHeat.Simulation.Physics;

/// <summary>
/// Metal, jacket and radiator of the engine. The tank's line leaves from the jacket and comes back into it.
/// </summary>
internal sealed class Engine(EngineTraits traits, HeatBook book, double celsius, double outsideCelsius)
{
    /// <summary>Coupling of the metal to a full jacket, W/K: some 5 to 10 K apart at 20 kW.</summary>
    private const double JacketWPerK = 2_600;

    /// <summary>Main circuit at 2000 rpm, thermostat wide open, L/s (about 60 L/min).</summary>
    private const double MainLitresPerS = 1.0;

    /// <summary>The radiator's fan comes on and goes off at these, degrees Celsius.</summary>
    private const double FanOnCelsius = 98, FanOffCelsius = 93;

    /// <summary>
    /// Swept volume and stroke of a 2.2 litre diesel, and the share of its drag that is rubbing (common practice, no
    /// source).
    /// </summary>
    private const double SweptM3 = 2.2e-3, StrokeM = 0.096, RubbingShare = 0.5;

    /// <summary>
    /// A capped system boils off what it cannot carry (50 % glycol under a 1.1 bar cap: about 130 °C).
    /// </summary>
    private const double BoilsCelsius = 130;

    private double _radiatorCelsius = outsideCelsius + (0.2 * (celsius - outsideCelsius));
    private bool _isFanOn;

    public Thermostat Thermostat { get; } = new(traits, celsius);

    public double MetalCelsius { get; private set; } = celsius;

    /// <summary>Coolant leaving the engine.</summary>
    public double JacketCelsius { get; private set; } = celsius;

    /// <summary>Share of jacket and radiator that still holds coolant, 0 to 1.</summary>
    public double Fill { get; private set; } = 1;

    /// <summary>Heat taken by the cab heater in the last step, watts.</summary>
    public double HeaterW { get; private set; }

    /// <summary>Heat above 0 °C in metal, jacket and radiator, joules.</summary>
    public double HeatJ =>
        (traits.MetalJPerK * MetalCelsius) + (JacketJPerK * JacketCelsius) + (RadiatorJPerK * _radiatorCelsius);

    private double JacketJPerK => 500 + (traits.JacketLitres * Fill * Fluids.CoolantJPerLitreK);

    private double RadiatorJPerK => traits.RadiatorJPerK + (traits.RadiatorLitres * Fill * Fluids.CoolantJPerLitreK);

    /// <summary>A step of the engine by itself.</summary>
    /// <param name="stepS">Length of the step, seconds.</param>
    /// <param name="road">What the driver asks of it.</param>
    /// <param name="tankJ">Heat that the tank's line brought less what it took in this step, joules.</param>
    /// <param name="outsideCelsius">Open air.</param>
    /// <param name="heaterShare">Cab heater, 0 off to 1.</param>
    /// <param name="cabCelsius">Air that the heater warms.</param>
    public void Step(
        double stepS, in RoadState road, double tankJ, double outsideCelsius, double heaterShare, double cabCelsius)
    {
        var burntJ = road.IsEngineOn
            ? Math.Max((traits.CoolantShare * road.FuelW) + (1_200 * road.Rpm / 2000), DraggedW(road.Rpm)) * stepS : 0;
        book.In(burntJ);
        var lostJ =
            traits.BlockLossWPerK * (1 + Math.Min(1, road.SpeedKmh / 60)) * (MetalCelsius - outsideCelsius) * stepS;
        book.Out(lostJ);
        var coupling = JacketWPerK * Math.Max(0.04, Fill * Fill) * (road.IsEngineOn ? 1 : 0.3);
        var intoJacketJ = Exchange(coupling * stepS, traits.MetalJPerK, JacketJPerK, MetalCelsius - JacketCelsius);
        MetalCelsius += (burntJ - lostJ - intoJacketJ) / traits.MetalJPerK;

        var heaterFlowShare = road.IsEngineOn ? Math.Min(1, road.Rpm / 1500) * Fill : 0;
        var heaterJ =
            traits.HeaterWPerK * heaterShare * heaterFlowShare * Math.Max(0, JacketCelsius - cabCelsius) * stepS;
        HeaterW = heaterJ / stepS;
        book.Out(heaterJ);
        JacketCelsius += (intoJacketJ + tankJ - heaterJ) / JacketJPerK;
        Cool(stepS, road, outsideCelsius);
        if (JacketCelsius > BoilsCelsius)
        {
            book.Out((JacketCelsius - BoilsCelsius) * JacketJPerK);
            JacketCelsius = BoilsCelsius;
        }
    }

    /// <summary>
    /// Coolant leaves for good. It goes out of the jacket (the caller books its heat), and the radiator's share follows
    /// into the jacket. Gives the litres that were there to lose.
    /// </summary>
    public double Lose(double litres)
    {
        var held = traits.JacketLitres + traits.RadiatorLitres;
        var share = Math.Clamp(litres / held, 0, Fill - 0.05);
        var jacketJ = (JacketJPerK * JacketCelsius)
            + (share * traits.RadiatorLitres * Fluids.CoolantJPerLitreK * _radiatorCelsius);
        Fill -= share;
        JacketCelsius = jacketJ / JacketJPerK;
        return share * held;
    }

    /// <summary>
    /// Cold liquid poured in takes the place of as much warm coolant in the jacket (which goes to the bottle).
    /// </summary>
    public void PourIn(double litres, double celsius)
    {
        var joules =
            Math.Min(litres, traits.JacketLitres * Fill) * Fluids.CoolantJPerLitreK * (celsius - JacketCelsius);
        book.In(joules);
        JacketCelsius += joules / JacketJPerK;
    }

    /// <summary>
    /// Coolant runs out of jacket and radiator alike, as when a hose is taken off a cold engine. Gives the litres.
    /// </summary>
    public double RunOut(double litres)
    {
        var held = traits.JacketLitres + traits.RadiatorLitres;
        var (jacket, radiator) = (JacketJPerK, RadiatorJPerK);
        var share = Math.Clamp(litres / held, 0, Fill - 0.05);
        Fill -= share;
        book.Out(((jacket - JacketJPerK) * JacketCelsius) + ((radiator - RadiatorJPerK) * _radiatorCelsius));
        return share * held;
    }

    /// <summary>What is missing in jacket and radiator is filled up with coolant of a certain temperature.</summary>
    public void FillUp(double celsius)
    {
        var (jacket, radiator) = (JacketJPerK, RadiatorJPerK);
        Fill = 1;
        JacketCelsius = Mixed(jacket, JacketCelsius, JacketJPerK, celsius);
        _radiatorCelsius = Mixed(radiator, _radiatorCelsius, RadiatorJPerK, celsius);
        book.In((JacketJPerK - jacket + RadiatorJPerK - radiator) * celsius);
    }

    private static double Mixed(double beforeJPerK, double celsius, double afterJPerK, double addedCelsius) =>
        ((beforeJPerK * celsius) + ((afterJPerK - beforeJPerK) * addedCelsius)) / afterJPerK;

    /// <summary>
    /// An engine that the van drags downhill burns nothing and yet is warmed: the brake work of its rubbing parts stays
    /// in it. Mean pressure of a motored diesel 75 + 48 n + 0.4 v^2 kPa (n in 1000 rpm, v mean piston speed in m/s;
    /// Heywood, Internal Combustion Engine Fundamentals, eq. 13.6; from memory); half of it is rubbing, the rest is
    /// pumped out with the air.
    /// </summary>
    private static double DraggedW(double rpm)
    {
        var thousands = rpm / 1000;
        var pistonMPerS = 2 * StrokeM * rpm / 60;
        var meanPa = 1000 * (75 + (48 * thousands) + (0.4 * pistonMPerS * pistonMPerS));
        return RubbingShare * meanPa * SweptM3 * rpm / 120;
    }

    private void Cool(double stepS, in RoadState road, double outsideCelsius)
    {
        var opening = Thermostat.Open(stepS, JacketCelsius);
        var pumped = road.IsEngineOn && Fill > 0.6 ? road.Rpm / 2000 : 0;
        var carried = MainLitresPerS * pumped * opening * Fluids.CoolantJPerLitreK * stepS;
        var movedJ = Exchange(carried, JacketJPerK, RadiatorJPerK, JacketCelsius - _radiatorCelsius);
        JacketCelsius -= movedJ / JacketJPerK;
        _isFanOn = road.IsEngineOn && JacketCelsius > (_isFanOn ? FanOffCelsius : FanOnCelsius);
        var airWPerK = 90 + (5 * road.SpeedKmh) + (_isFanOn ? 350 : 0);
        var radiator = RadiatorJPerK;
        var warmed = _radiatorCelsius + (movedJ / radiator);
        _radiatorCelsius =
            ((radiator * warmed) + (airWPerK * stepS * outsideCelsius)) / (radiator + (airWPerK * stepS));
        book.Out(radiator * (warmed - _radiatorCelsius));
    }

    /// <summary>
    /// Heat that flows between two bodies in a step, joules: the exact solution's limit is kept, so no step overshoots.
    /// </summary>
    private static double Exchange(double couplingJPerK, double firstJPerK, double secondJPerK, double differenceK)
    {
        var both = firstJPerK * secondJPerK / (firstJPerK + secondJPerK);
        return differenceK * couplingJPerK * both / (both + couplingJPerK);
    }
}
