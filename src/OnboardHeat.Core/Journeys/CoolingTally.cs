using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Screening;
using OnboardHeat.Core.Tank;

namespace OnboardHeat.Core.Journeys;

/// <summary>
/// What a journey tells of the tank's surroundings and, when it stands, of its lagging. Where a contact tells that the
/// valves to the coil are open, coolant may take heat out by its own buoyancy: ten minutes of that move as much heat as
/// the lagging in hours. So the lagging is judged by a stretch with closed valves only, and the first that is long
/// enough stands.
/// </summary>
internal sealed class CoolingTally(double heatJPerK)
{
    private readonly CoolingStretch _stretch = new(heatJPerK);
    private double _surroundingsKS;
    private double _surroundingsS;
    private double _openS;
    private double _closedS;
    private double _circulatedS;
    private double _spanS;
    private bool _isDone;

    /// <summary>Mean of the surroundings, degrees Celsius; null without good readings.</summary>
    public double? SurroundingsCelsius => _surroundingsS > 0 ? _surroundingsKS / _surroundingsS : null;

    /// <summary>
    /// Share of the time that the valves were open, of that in which their contact told; null when it never did.
    /// </summary>
    public double? ValvesOpenShare => _openS + _closedS > 0 ? _openS / (_openS + _closedS) : null;

    /// <summary>
    /// Share of the time that coolant took heat out by its own buoyancy, where no contact told that it could not.
    /// </summary>
    public double CirculatedShare => _spanS > 0 ? _circulatedS / _spanS : 0;

    /// <summary>The stretch by which the lagging is judged.</summary>
    public CoolingStretch Stretch => _stretch;

    public void Begin()
    {
        (_surroundingsKS, _surroundingsS, _openS, _closedS, _circulatedS, _spanS, _isDone) = (0, 0, 0, 0, 0, 0, false);
        _stretch.Begin();
    }

    public void Add(ScreenedScan scan, TankEstimate tank, double stepS)
    {
        var areClosed = scan[Signal.ValvesClosed];
        _spanS += stepS;
        _closedS += areClosed == true ? stepS : 0;
        _openS += areClosed == false ? stepS : 0;
        _circulatedS += areClosed is null && tank.IsLosingThroughCircuit ? stepS : 0;
        if (scan[Channel.Surroundings].IsGood)
        {
            _surroundingsKS += scan[Channel.Surroundings].Value * stepS;
            _surroundingsS += stepS;
        }

        if (areClosed == false)
        {
            _isDone |= _stretch.SpanS >= CoolingStretch.LongEnoughS;
            if (!_isDone)
            {
                _stretch.Begin();
            }
        }
        else if (!_isDone)
        {
            _stretch.Add(scan, tank, stepS);
        }
    }
}
