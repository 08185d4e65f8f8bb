using Microsoft.Extensions.Logging;

namespace OnboardHeat.Outputs.Pins;

/// <summary>
/// Keeps one output's failures to itself: not tried again before its time, and each reason said once.
/// </summary>
internal sealed class Retry(string output, TimeProvider time, ILogger log)
{
    public static readonly TimeSpan First = TimeSpan.FromSeconds(1);

    /// <summary>A wire pushed back in is found within a minute.</summary>
    public static readonly TimeSpan Longest = TimeSpan.FromMinutes(1);

    private TimeSpan _wait = First;
    private TimeSpan _notBefore;
    private string? _reason;
    private bool _hasWorked;
    private readonly long _start = time.GetTimestamp();

    public bool IsDue => Now >= _notBefore;

    /// <summary>How long until it may be tried again; zero: now.</summary>
    public TimeSpan Left => IsDue ? TimeSpan.Zero : _notBefore - Now;

    /// <summary>Why it does not work; null while it does, or has not been tried.</summary>
    public string? Reason => _reason;

    private TimeSpan Now => time.GetElapsedTime(_start);

    public void Failed(Exception exception)
    {
        var reason = exception.Message.ReplaceLineEndings(" ");
        if (reason != _reason)
        {
            _reason = reason;
            log.OutputGone(output, reason);
        }

        _notBefore = Now + _wait;
        _wait = _wait * 2 < Longest ? _wait * 2 : Longest;
    }

    public void Worked()
    {
        if (!_hasWorked || _reason is not null)
        {
            log.OutputWorks(output);
        }

        _hasWorked = true;
        _reason = null;
        _wait = First;
        _notBefore = TimeSpan.Zero;
    }
}
