using OnboardHeat.Core.Scans;

namespace OnboardHeat.Core.Screening;

/// <summary>
/// Judges every reading of a scan before anybody uses it: first each channel by itself, then the channels against each
/// other. A reading that is not believed keeps the last believed value beside it, with its age.
/// </summary>
internal sealed class ReadingScreen
{
    private readonly FittedSet _fitted;
    private readonly ScreenedScan _screened;
    private readonly ChannelScreen[] _channels = new ChannelScreen[Channels.Count];
    private readonly ScreenedReading[] _before = new ScreenedReading[Channels.Count];
    private readonly Standstill[] _standstills;
    private readonly LooseLine[] _looseLines;
    private readonly ExchangedPair[] _pairs;
    private readonly ExchangedPair _lines;
    private double _lastElapsedS = double.NaN;

    public ReadingScreen(FittedSet fitted)
    {
        _fitted = fitted;
        _screened = new ScreenedScan { Fitted = fitted };
        foreach (var channel in Channels.All)
        {
            _channels[(int)channel] = new ChannelScreen(Places.Of(channel));
            _before[(int)channel] = new ScreenedReading(0, ReadingFault.Missing, double.PositiveInfinity);
        }

        _standstills = [.. Neighbourhood.Standstills().Where(s => fitted.Has(s.Channel))];
        _looseLines = [.. Neighbourhood.LooseLines().Where(l => fitted.Has(l.Line))];
        var pairs = Neighbourhood.Pairs(fitted);
        _pairs = [.. pairs.Where(p => fitted.Has(p.Warmer) && fitted.Has(p.Colder))];
        _lines = pairs.Single(p => p.Warmer == Channel.Flow);
    }

    /// <summary>Screens a scan. The result is reused by the next call.</summary>
    public ScreenedScan Observe(Scan scan)
    {
        var elapsedS = scan.Elapsed.TotalSeconds;
        _screened.IsFirstOfRun = double.IsNaN(_lastElapsedS);
        _screened.StepS = _screened.IsFirstOfRun ? 0 : elapsedS - _lastElapsedS;
        _screened.ElapsedS = elapsedS;
        _screened.Run = scan.Run;
        _screened.Raw = scan;
        _lastElapsedS = elapsedS;
        JudgeEach(scan, elapsedS);
        JudgeTogether();
        foreach (var channel in Channels.All)
        {
            _before[(int)channel] = _screened[channel];
        }

        return _screened;
    }

    private void JudgeEach(Scan scan, double elapsedS)
    {
        foreach (var channel in Channels.All)
        {
            if (!_fitted.Has(channel))
            {
                _screened[channel] = new ScreenedReading(0, ReadingFault.Missing, double.PositiveInfinity);
                continue;
            }

            var reading = scan[channel];
            var fault = _channels[(int)channel].Observe(reading, elapsedS, Neighbourhood.HasWitness(scan, channel));
            _screened[channel] = fault == ReadingFault.None
                ? new ScreenedReading(reading.Value, fault, 0) : Doubted(channel, fault);
        }
    }

    private void JudgeTogether()
    {
        // What has come off its pipe is taken out before it can make a standing partner look stuck or the pair look
        // exchanged.
        foreach (var line in _looseLines)
        {
            if (line.Observe(_screened, _lines.WasInOrder))
            {
                _screened[line.Line] = Doubted(line.Line, ReadingFault.Loose);
            }
        }

        foreach (var pair in _pairs)
        {
            if (pair.Observe(_screened))
            {
                Disbelieve(pair.Warmer, ReadingFault.Swapped);
                Disbelieve(pair.Colder, ReadingFault.Swapped);
            }
        }

        Span<bool> isStuck = stackalloc bool[_standstills.Length];
        for (var i = 0; i < _standstills.Length; i++)
        {
            isStuck[i] = _standstills[i].Observe(_screened);
        }

        for (var i = 0; i < _standstills.Length; i++)
        {
            if (isStuck[i])
            {
                Disbelieve(_standstills[i].Channel, ReadingFault.Stuck);
            }
        }
    }

    private void Disbelieve(Channel channel, ReadingFault fault)
    {
        if (_screened[channel].IsGood)
        {
            _screened[channel] = Doubted(channel, fault);
        }
    }

    private ScreenedReading Doubted(Channel channel, ReadingFault fault)
    {
        var before = _before[(int)channel];
        return new ScreenedReading(before.Value, fault, before.AgeS + _screened.StepS);
    }
}
