using Microsoft.Extensions.Logging;

namespace OnboardHeat.Messaging.Supervision;

/// <summary>
/// Keeps the log readable while the broker is away: a reason is said once, then once an hour, and its end is said too.
/// </summary>
internal sealed class Outage(string broker, string root, TimeProvider time, ILogger log)
{
    public static readonly TimeSpan Reminder = TimeSpan.FromHours(1);

    private string? _reason;
    private long _since;
    private long _saidAt;
    private int _tries;

    /// <summary>A try failed, or a connection ended.</summary>
    public void Failed(string reason)
    {
        if (_tries++ == 0)
        {
            _since = time.GetTimestamp();
        }

        if (reason != _reason)
        {
            _reason = reason;
            _saidAt = time.GetTimestamp();
            log.Away(broker, reason);
        }
        else if (time.GetElapsedTime(_saidAt) >= Reminder)
        {
            _saidAt = time.GetTimestamp();
            log.StillAway(broker, reason, _tries, time.GetElapsedTime(_since).TotalMinutes);
        }
    }

    /// <summary>A connection came about.</summary>
    public void Over()
    {
        if (_tries == 0)
        {
            log.Connected(broker, root);
        }
        else
        {
            log.ConnectedAgain(broker, _tries, time.GetElapsedTime(_since).TotalMinutes, root);
        }

        _tries = 0;
        _reason = null;
    }
}
