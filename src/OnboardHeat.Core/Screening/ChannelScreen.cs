using OnboardHeat.Core.Scans;

namespace OnboardHeat.Core.Screening;

/// <summary>
/// Judges one channel by itself. Two states: believed, and in doubt. A false value or a silence puts a channel in
/// doubt; it comes back after as many good readings in a row as its fault calls for, each following the one before as a
/// probe with a lag does.
/// </summary>
internal sealed class ChannelScreen(PlaceLimits place)
{
    private Trail _believed = Trail.Empty;
    private Trail _candidate = Trail.Empty;
    private ReadingFault _cause;
    private int _owed;
    private int _given;
    private int _owedForStep = ScreeningPolicy.GoodAfterStep;
    private double _lastStepFaultS = double.NegativeInfinity;

    /// <summary>
    /// The fault of this reading, <see cref="ReadingFault.None"/> when it is believed. <paramref name="hasWitness"/>
    /// says whether another place reads near it: asked for only when the value is suspect and nothing before it tells.
    /// </summary>
    public ReadingFault Observe(Reading reading, double elapsedS, bool hasWitness)
    {
        var own = OwnFault(reading, elapsedS, hasWitness);
        if (own != ReadingFault.None)
        {
            var isSilence = !reading.HasValue && IsSilence(own);
            Doubt(own, isSilence ? ScreeningPolicy.GoodAfterSilence : ScreeningPolicy.GoodAfterFalseValue);
            return own;
        }

        return _owed == 0 ? Continue(reading.Value, elapsedS) : Recover(reading.Value, elapsedS);
    }

    private ReadingFault OwnFault(Reading reading, double elapsedS, bool hasWitness)
    {
        if (!reading.HasValue)
        {
            var isOld = !_believed.IsEmpty && elapsedS - _believed.AtS > place.StaleS;
            return reading.Fault == ReadingFault.Missing && isOld ? ReadingFault.Stale : reading.Fault;
        }

        if (!(reading.Value >= place.LowestCelsius && reading.Value <= place.HighestCelsius))
        {
            return ReadingFault.OutOfRange;
        }

        return FaultOfValue(reading.Value) is var fault && fault != ReadingFault.None
            && IsJump(reading.Value, elapsedS, hasWitness)
            ? fault
            : ReadingFault.None;
    }

    private static ReadingFault FaultOfValue(double celsius) => celsius switch
    {
        ScreeningPolicy.PowerOnCelsius => ReadingFault.PowerOn,
        ScreeningPolicy.HeldLowCelsius => ReadingFault.AllZero,
        ScreeningPolicy.NobodyCelsius => ReadingFault.Missing,
        _ => ReadingFault.None,
    };

    private bool IsJump(double celsius, double elapsedS, bool hasWitness)
    {
        if (_given == 0 && _cause != ReadingFault.None && _cause == FaultOfValue(celsius))
        {
            // It has stood on that value since it jumped there: only moving off it proves that it measures.
            return true;
        }

        // Readings gathered in doubt are a reference too: a probe that comes back at 84.9 may pass 85.0 on its way.
        var reference = _given > 0 ? _candidate : _believed;
        return reference.IsEmpty || elapsedS - reference.AtS > ScreeningPolicy.ReferenceOldS
            ? !hasWitness
            : Math.Abs(celsius - reference.Celsius) > ScreeningPolicy.SuspectJumpK;
    }

    private ReadingFault Continue(double celsius, double elapsedS)
    {
        if (_believed.IsEmpty || Follows(_believed, celsius, elapsedS))
        {
            _believed = _believed.Next(celsius, elapsedS);
            return ReadingFault.None;
        }

        if (elapsedS - _lastStepFaultS > ScreeningPolicy.RelapseS)
        {
            _owedForStep = ScreeningPolicy.GoodAfterStep;
        }

        Doubt(ReadingFault.ImplausibleStep, _owedForStep);
        _lastStepFaultS = elapsedS;
        Gather(celsius, elapsedS);
        return ReadingFault.ImplausibleStep;
    }

    private ReadingFault Recover(double celsius, double elapsedS)
    {
        if (_given == 0 && _cause != ReadingFault.ImplausibleStep
            && !_believed.IsEmpty && !Reaches(_believed, celsius, elapsedS))
        {
            // It comes back somewhere else than it can have gone meanwhile: that is a step, whatever came between.
            Doubt(ReadingFault.ImplausibleStep, _owedForStep);
        }

        if (_given > 0 && !(Follows(_candidate, celsius, elapsedS) && _candidate.IsSmooth(celsius, elapsedS)))
        {
            _given = 0;
        }

        Gather(celsius, elapsedS);
        if (_given < _owed)
        {
            return _cause;
        }

        if (_cause == ReadingFault.ImplausibleStep)
        {
            _owedForStep = Math.Min(2 * _owedForStep, ScreeningPolicy.GoodAfterStepMost);
            _lastStepFaultS = elapsedS;
        }

        _believed = _candidate;
        _owed = 0;
        _given = 0;
        _cause = ReadingFault.None;
        return ReadingFault.None;
    }

    private bool Reaches(Trail from, double celsius, double elapsedS)
    {
        var stepK = celsius - from.Celsius;
        return Math.Abs(stepK) <= place.StepLimitK(stepK, elapsedS - from.AtS);
    }

    private bool Follows(Trail from, double celsius, double elapsedS) =>
        Reaches(from, celsius, elapsedS) && !from.Turns(celsius, elapsedS);

    private void Doubt(ReadingFault cause, int owed)
    {
        _cause = cause;
        _owed = Math.Max(_owed, owed);
        _given = 0;
    }

    private void Gather(double celsius, double elapsedS)
    {
        _candidate = _given == 0 ? Trail.Empty.Next(celsius, elapsedS) : _candidate.Next(celsius, elapsedS);
        _given++;
    }

    private static bool IsSilence(ReadingFault fault) =>
        fault is ReadingFault.Missing or ReadingFault.BadCrc or ReadingFault.Stale;
}
