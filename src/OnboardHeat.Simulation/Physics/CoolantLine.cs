namespace OnboardHeat.Simulation.Physics;

/// <summary>
/// A hose from the engine to the tank or back, as a row of cells that coolant passes through. Coolant and wall of a
/// cell share one temperature, so a warm front travels somewhat slower than the coolant, as in a real hose. The sweep
/// is implicit: it holds for any flow and any step, and what leaves one cell enters the next to the joule.
/// </summary>
internal sealed class CoolantLine
{
    private readonly HeatBook _book;
    private readonly double[] _celsius;
    private readonly double _cellLitres;
    private readonly double _wallJPerK;
    private readonly double _lossWPerK;

    public CoolantLine(LineTraits traits, HeatBook book, double celsius)
    {
        _book = book;
        _celsius = new double[CellCount];
        _cellLitres = traits.VolumeLitres / CellCount;
        _wallJPerK = traits.WallJPerMK * traits.LengthM / CellCount;
        _lossWPerK = traits.LossWPerMK * traits.LengthM / CellCount;
        Array.Fill(_celsius, celsius);
    }

    /// <summary>
    /// Eight cells spread a front over about a third of the line, as dispersion in a hose with bends does.
    /// </summary>
    public const int CellCount = 8;

    /// <summary>Share of the line that holds coolant, 0 to 1.</summary>
    public double Fill { get; private set; } = 1;

    /// <summary>Temperature at the engine's end.</summary>
    public double EngineEndCelsius => _celsius[0];

    /// <summary>Temperature at the tank's end.</summary>
    public double TankEndCelsius => _celsius[^1];

    /// <summary>Temperature in the middle, under the floor.</summary>
    public double MiddleCelsius => _celsius[CellCount / 2];

    /// <summary>Heat above 0 °C in coolant and wall, joules.</summary>
    public double HeatJ
    {
        get
        {
            double sum = 0;
            foreach (var cell in _celsius)
            {
                sum += cell;
            }

            return sum * CellJPerK;
        }
    }

    private double CellJPerK => (_cellLitres * Fill * Fluids.CoolantJPerLitreK) + _wallJPerK;

    /// <summary>
    /// A step. Coolant enters at one end and leaves at the other at the temperature given back; with no flow the line
    /// just cools.
    /// </summary>
    /// <param name="stepS">Length of the step, seconds.</param>
    /// <param name="flowLitresPerS">Coolant passing, zero or more.</param>
    /// <param name="enteringCelsius">Its temperature.</param>
    /// <param name="isTowardsTank">Which way it passes.</param>
    /// <param name="airCelsius">Air around the line.</param>
    /// <param name="windFactor">Loss against still air; a ford gives a high one.</param>
    public double Pass(
        double stepS, double flowLitresPerS, double enteringCelsius, bool isTowardsTank, double airCelsius,
        double windFactor)
    {
        var cell = CellJPerK;
        var carried = flowLitresPerS * Fluids.CoolantJPerLitreK * stepS;
        var lossJPerK = _lossWPerK * windFactor * stepS;
        var divisor = 1 / (cell + carried + lossJPerK);
        var lost = 0.0;
        var celsius = enteringCelsius;
        for (var i = 0; i < CellCount; i++)
        {
            ref var own = ref _celsius[isTowardsTank ? i : CellCount - 1 - i];
            own = ((cell * own) + (carried * celsius) + (lossJPerK * airCelsius)) * divisor;
            lost += lossJPerK * (own - airCelsius);
            celsius = own;
        }

        _book.Out(lost);
        return celsius;
    }

    /// <summary>Coolant runs out of the line (air takes its place); its heat goes with it.</summary>
    public void Drain(double litres)
    {
        var share = Math.Min(Fill, litres / (_cellLitres * CellCount));
        double sum = 0;
        foreach (var cell in _celsius)
        {
            sum += cell;
        }

        _book.Out(sum * share * _cellLitres * Fluids.CoolantJPerLitreK);
        Fill -= share;
    }

    /// <summary>
    /// What is missing is filled up with coolant of a certain temperature, which mixes with what is there.
    /// </summary>
    public void FillUp(double celsius)
    {
        var share = 1 - Fill;
        var before = CellJPerK;
        Fill = 1;
        var after = CellJPerK;
        for (var i = 0; i < CellCount; i++)
        {
            _celsius[i] = ((before * _celsius[i]) + ((after - before) * celsius)) / after;
        }

        _book.In(share * CellCount * _cellLitres * Fluids.CoolantJPerLitreK * celsius);
    }
}
