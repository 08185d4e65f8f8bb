namespace OnboardHeat.Core.Circuit;

/// <summary>
/// The last minutes of one probe: times and temperatures in a ring, oldest overwritten. Slopes and means over any
/// window of it, without allocating. Steps may be irregular: every figure is taken over time, never over counts of
/// scans.
/// </summary>
internal sealed class Trace
{
    /// <summary>Readings kept: five minutes at one a second, longer at longer steps.</summary>
    public const int Capacity = 320;

    /// <summary>Slots whose range is kept: windows of minutes are asked for a dozen times a scan.</summary>
    private const int Block = 8;

    /// <summary>Closer readings are left out, so that a fast scan cannot shorten the memory.</summary>
    private const double SpacingS = 0.9;

    /// <summary>A window counts as covered when readings span this share of it.</summary>
    private const double CoveredShare = 0.55;

    private readonly double[] _timeS = new double[Capacity];
    private readonly double[] _celsius = new double[Capacity];
    private readonly double[] _blockLow = new double[Capacity / Block];
    private readonly double[] _blockHigh = new double[Capacity / Block];
    private int _oldestSlot;
    private int _count;

    /// <summary>Elapsed seconds of the newest reading; negative infinity when there is none.</summary>
    public double NewestS => _count == 0 ? double.NegativeInfinity : _timeS[Slot(_count - 1)];

    /// <summary>The newest reading in degrees Celsius; zero when there is none.</summary>
    public double Newest => _count == 0 ? 0 : _celsius[Slot(_count - 1)];

    /// <summary>Takes a reading. Times must not fall.</summary>
    public void Add(double timeS, double celsius)
    {
        if (timeS - NewestS < SpacingS)
        {
            return;
        }

        var slot = Slot(_count);
        _timeS[slot] = timeS;
        _celsius[slot] = celsius;
        var block = slot / Block;
        _blockLow[block] = slot % Block == 0 ? celsius : Math.Min(_blockLow[block], celsius);
        _blockHigh[block] = slot % Block == 0 ? celsius : Math.Max(_blockHigh[block], celsius);
        if (_count < Capacity)
        {
            _count++;
        }
        else
        {
            _oldestSlot = Slot(1);
        }
    }

    /// <summary>Forgets everything.</summary>
    public void Clear() => (_oldestSlot, _count) = (0, 0);

    /// <summary>Least-squares slope over a window of elapsed time. False when the readings do not cover it.</summary>
    public bool TrySlope(double fromS, double untilS, out Slope slope)
    {
        double sumT = 0, sumX = 0, sumTt = 0, sumTx = 0;
        var count = 0;
        double firstS = 0, lastS = 0;
        for (var i = FirstAtOrAfter(fromS); i < _count; i++)
        {
            var slot = Slot(i);
            if (_timeS[slot] > untilS)
            {
                break;
            }

            var t = _timeS[slot] - fromS;
            firstS = count == 0 ? t : firstS;
            lastS = t;
            sumT += t;
            sumX += _celsius[slot];
            sumTt += t * t;
            sumTx += t * _celsius[slot];
            count++;
        }

        if (count < 3 || lastS - firstS < CoveredShare * (untilS - fromS))
        {
            slope = default;
            return false;
        }

        var spread = sumTt - (sumT * sumT / count);
        var mean = sumX / count;
        slope = new Slope((sumTx - (sumT * mean)) / spread, mean, Probes.NoiseK / Math.Sqrt(spread), lastS - firstS);
        return true;
    }

    /// <summary>Lowest and highest reading in a window. False when it holds none.</summary>
    public bool TryRange(double fromS, double untilS, out double lowest, out double highest)
    {
        lowest = double.PositiveInfinity;
        highest = double.NegativeInfinity;
        var end = untilS >= NewestS ? _count : FirstAtOrAfter(Math.BitIncrement(untilS));
        for (var i = FirstAtOrAfter(fromS); i < end;)
        {
            var slot = Slot(i);
            var isWhole = slot % Block == 0 && i + Block <= end;
            var (low, high) = isWhole
                ? (_blockLow[slot / Block], _blockHigh[slot / Block]) : (_celsius[slot], _celsius[slot]);
            lowest = low < lowest ? low : lowest;
            highest = high > highest ? high : highest;
            i += isWhole ? Block : 1;
        }

        return double.IsFinite(lowest);
    }

    /// <summary>Where a reading stands, counted from the oldest.</summary>
    private int Slot(int index)
    {
        var slot = _oldestSlot + index;
        return slot < Capacity ? slot : slot - Capacity;
    }

    private int FirstAtOrAfter(double timeS)
    {
        var (low, high) = (0, _count);
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (_timeS[Slot(middle)] < timeS)
            {
                low = middle + 1;
            }
            else
            {
                high = middle;
            }
        }

        return low;
    }
}
