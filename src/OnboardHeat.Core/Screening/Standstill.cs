using OnboardHeat.Core.Scans;

namespace OnboardHeat.Core.Screening;

/// <summary>
/// Finds a probe that stands to the sixteenth while its neighbours move. A parked tank stands still for an hour and is
/// no fault: only a neighbour that moved by several kelvin says that this one should have moved too.
/// </summary>
internal sealed class Standstill(Channel channel, Channel[] neighbours, double stillS, double neighbourMovedK)
{
    private readonly double[] _neighbourThen = new double[neighbours.Length];
    private double _celsius = double.NaN;
    private double _sinceS;
    private int _owed;

    public Channel Channel => channel;

    /// <summary>Whether the reading of this scan is to be taken as stuck.</summary>
    public bool Observe(ScreenedScan scan)
    {
        var reading = scan[channel];
        if (!reading.IsGood)
        {
            return false;
        }

        // A reading is a multiple of 1/16 K plus a fixed offset: standing means the very same number.
        if (reading.Value.Equals(_celsius))
        {
            if (_owed == 0 && scan.ElapsedS - _sinceS >= stillS
                && !IsAtRest(scan, reading.Value) && HasNeighbourMoved(scan))
            {
                _owed = ScreeningPolicy.GoodAfterFalseValue;
            }
        }
        else
        {
            _celsius = reading.Value;
            _sinceS = scan.ElapsedS;
            RememberNeighbours(scan);
            _owed = Math.Max(0, _owed - 1);
        }

        return _owed > 0;
    }

    private bool HasNeighbourMoved(ScreenedScan scan)
    {
        for (var i = 0; i < neighbours.Length; i++)
        {
            if (scan[neighbours[i]].IsGood
                && Math.Abs(scan[neighbours[i]].Value - _neighbourThen[i]) >= neighbourMovedK)
            {
                return true;
            }
        }

        return false;
    }

    private bool IsAtRest(ScreenedScan scan, double celsius)
    {
        var air = scan[Channel.Surroundings];
        return channel is not (Channel.Surroundings or Channel.Tray) && air.IsGood
            && Math.Abs(celsius - air.Value) < ScreeningPolicy.AtRestK;
    }

    private void RememberNeighbours(ScreenedScan scan)
    {
        for (var i = 0; i < neighbours.Length; i++)
        {
            // Not believed just now: NaN compares false ever after, so this neighbour is no witness for this
            // standstill.
            _neighbourThen[i] = scan[neighbours[i]].IsGood ? scan[neighbours[i]].Value : double.NaN;
        }
    }
}
