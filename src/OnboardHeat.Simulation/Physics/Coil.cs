namespace OnboardHeat.Simulation.Physics;

/// <summary>
/// The coil in the tank: coolant passes segment by segment through the layers it lies in. A segment with flow gives
/// what the effectiveness-NTU relation of a tube in still water says (1 - e^-NTU); its film resistances change with
/// flow and drive.
/// </summary>
internal sealed class Coil
{
    private readonly CoilTraits _traits;
    private readonly LayeredTank _tank;
    private readonly double[] _celsius;
    private readonly int _lowest;
    private readonly double _segmentJPerK;

    public Coil(CoilTraits traits, LayeredTank tank)
    {
        _traits = traits;
        _tank = tank;
        _lowest = Math.Clamp((int)Math.Round(traits.FromHeightShare * tank.Count), 0, tank.Count - 2);
        var highest = Math.Clamp((int)Math.Round(traits.ToHeightShare * tank.Count), _lowest + 2, tank.Count);
        _celsius = new double[highest - _lowest];
        _segmentJPerK = traits.VolumeLitres * Fluids.CoolantJPerLitreK / _celsius.Length;
        for (var i = 0; i < _celsius.Length; i++)
        {
            _celsius[i] = tank.Celsius[_lowest + i];
            MeanCelsius += _celsius[i] / _celsius.Length;
        }
    }

    /// <summary>Heat given to the water in the last step, watts; negative when the circuit took heat out.</summary>
    public double GivenW { get; private set; }

    /// <summary>Mean temperature of the coolant in the coil.</summary>
    public double MeanCelsius { get; private set; }

    /// <summary>Temperature at the port that the flow line ends in.</summary>
    public double FlowPortCelsius => _traits.IsFedFromTop ? _celsius[^1] : _celsius[0];

    /// <summary>Temperature at the port that the return line begins at.</summary>
    public double ReturnPortCelsius => _traits.IsFedFromTop ? _celsius[0] : _celsius[^1];

    /// <summary>Heat above 0 °C in the coil's coolant, joules.</summary>
    public double HeatJ
    {
        get
        {
            double sum = 0;
            foreach (var segment in _celsius)
            {
                sum += segment;
            }

            return sum * _segmentJPerK;
        }
    }

    /// <summary>
    /// A step: coolant enters at the flow port (or, flowing back, at the return port) and leaves at the temperature
    /// given.
    /// </summary>
    public double Pass(double stepS, double flowLitresPerS, double enteringCelsius, bool isForwards)
    {
        var count = _celsius.Length;
        var conductance = ConductanceWPerK(flowLitresPerS * 60) / count;
        var carriedWPerK = flowLitresPerS * Fluids.CoolantJPerLitreK;

        // A stirred segment of conductance U' gives U'/(U' + mc); with U' = mc (e^NTU - 1) that is the tube's 1 -
        // e^-NTU. Beyond NTU 2.5 a segment leaves at the water's temperature anyhow.
        var ntu = carriedWPerK > 0 ? Math.Min(2.5, conductance / carriedWPerK) : 0;
        var given = conductance * stepS * (ntu > 0 ? (Math.Exp(ntu) - 1) / ntu : 1);
        var carried = carriedWPerK * stepS;
        var divisor = 1 / (_segmentJPerK + carried + given);
        var goesDown = _traits.IsFedFromTop == isForwards;
        double sum = 0, total = 0;
        var celsius = enteringCelsius;
        for (var i = 0; i < count; i++)
        {
            var place = goesDown ? count - 1 - i : i;
            var water = _tank.Celsius[_lowest + place];
            celsius = ((_segmentJPerK * _celsius[place]) + (carried * celsius) + (given * water)) * divisor;
            _celsius[place] = celsius;
            var joules = given * (celsius - water);
            _tank.AddHeat(_lowest + place, joules);
            total += joules;
            sum += celsius;
        }

        MeanCelsius = sum / count;
        GivenW = total / stepS;
        return celsius;
    }

    /// <summary>
    /// Conductance of the whole coil. Three resistances in series: the water outside (natural convection, drive^0.25),
    /// the coolant inside (flow^0.5, laminar in a bent tube) and the wall; shares at 5 L/min and 35 K are common
    /// practice, no source.
    /// </summary>
    private double ConductanceWPerK(double flowLitresPerMinute)
    {
        var driveK = Math.Max(1, Math.Abs(MeanCelsius - _tank.Celsius[_lowest + (_celsius.Length / 2)]));
        var outside = 0.6 * Math.Sqrt(Math.Sqrt(35 / driveK));
        var inside = 0.3 * Math.Sqrt(5 / Math.Max(0.3, flowLitresPerMinute));
        return _traits.ConductanceWPerK / (outside + inside + 0.1);
    }
}
