using OnboardHeat.Core.Scans;

namespace OnboardHeat.Core.Journeys;

/// <summary>
/// Adds up what each source gave. Heat gained with neither on counts for the one that was on last: it comes late
/// through the wall.
/// </summary>
internal sealed class SourceTally
{
    private readonly double[] _heatJ = new double[3];
    private readonly double[] _onS = new double[3];
    private HeatSource _last;
    private double _beforeJ;

    /// <summary>Begins anew; the heat gained before the first scan goes to whatever source that one shows.</summary>
    public void Begin(double gainedBeforeJ)
    {
        Array.Clear(_heatJ);
        Array.Clear(_onS);
        _last = HeatSource.Coolant;
        _beforeJ = gainedBeforeJ;
    }

    public void Add(bool isEngineOn, bool isElementOn, double stepS, double gainedJ)
    {
        if (isEngineOn || isElementOn)
        {
            _last = isEngineOn && isElementOn ? HeatSource.Both : isElementOn ? HeatSource.Element : HeatSource.Coolant;
            _onS[(int)_last] += stepS;
        }

        _heatJ[(int)_last] += gainedJ + _beforeJ;
        _beforeJ = 0;
    }

    /// <summary>What each source gave; empty where nobody tells whether the element is on.</summary>
    public IReadOnlyList<SourceHeat> Result(FittedSet fitted)
    {
        if (!fitted.Has(Signal.ElementOn))
        {
            return [];
        }

        List<SourceHeat> found = [];
        for (var i = 0; i < _onS.Length; i++)
        {
            if (_onS[i] > 0)
            {
                found.Add(new SourceHeat((HeatSource)i, _heatJ[i] / 3.6e6, _onS[i] / 60));
            }
        }

        return found;
    }
}
