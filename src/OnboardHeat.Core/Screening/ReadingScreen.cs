using OnboardHeat.Core.Scans;

namespace OnboardHeat.Core.Screening;

/// <summary>Judges every reading of a scan before anybody uses it.</summary>
internal sealed class ReadingScreen(FittedSet fitted)
{
    private readonly ScreenedScan _screened = new() { Fitted = fitted };
    private double _lastElapsedS = double.NaN;

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
        foreach (var channel in Channels.All)
        {
            var raw = fitted.Has(channel) ? scan[channel] : Reading.None;
            var before = _screened[channel];
            _screened[channel] = raw.HasValue
                ? new ScreenedReading(raw.Value, ReadingFault.None, 0)
                : new ScreenedReading(before.Value, raw.Fault, _screened.IsFirstOfRun ? double.PositiveInfinity : before.AgeS + _screened.StepS);
        }

        return _screened;
    }
}
