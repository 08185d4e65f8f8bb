using System.Globalization;
using System.Security.Cryptography;

namespace OnboardHeat.Messaging.Actions;

/// <summary>
/// Tells how old a question is, by nobody's clock but our own monotonic one. The broker carries no time of sending, a
/// phone's clock may be wrong and its messages may have waited in it for an hour; so the daemon says a moment every few
/// seconds, a question has to quote the newest, and its age is the time since that was said. The word at the front is
/// new at each start: a moment of an earlier run is void.
/// </summary>
internal sealed class Moments(TimeProvider time)
{
    /// <summary>A question older than this is not acted on (contracts).</summary>
    public static readonly TimeSpan Limit = TimeSpan.FromSeconds(30);

    private readonly long _start = time.GetTimestamp();
    private readonly string _run = RandomNumberGenerator.GetHexString(8, lowercase: true);

    /// <summary>The moment now, whole seconds.</summary>
    public string Now() => string.Create(CultureInfo.InvariantCulture, $"{_run}-{(long)Elapsed().TotalSeconds}");

    /// <summary>Time since a moment was said; null when it is none of this run's or lies ahead.</summary>
    public TimeSpan? AgeOf(string moment)
    {
        if (!moment.StartsWith(_run + "-", StringComparison.Ordinal)
            || !long.TryParse(
                moment.AsSpan(_run.Length + 1), NumberStyles.None, CultureInfo.InvariantCulture, out var seconds))
        {
            return null;
        }

        var age = Elapsed().TotalSeconds - seconds;
        return age < 0 ? null : TimeSpan.FromSeconds(age);
    }

    private TimeSpan Elapsed() => time.GetElapsedTime(_start);
}
