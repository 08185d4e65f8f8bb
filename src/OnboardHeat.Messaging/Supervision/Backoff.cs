namespace OnboardHeat.Messaging.Supervision;

/// <summary>
/// How long to wait before the next try: doubling from a second to a minute, each time shortened by chance to as little
/// as half, so that a camp site full of daemons does not fall upon a broker that comes back. Only a connection that
/// held begins the row anew.
/// </summary>
internal sealed class Backoff(Random random)
{
    public static readonly TimeSpan First = TimeSpan.FromSeconds(1);

    /// <summary>After hours away a broker that is back is found within a minute.</summary>
    public static readonly TimeSpan Longest = TimeSpan.FromMinutes(1);

    /// <summary>
    /// A connection that held for so long was a good one; a shorter one may be thrown out again and again.
    /// </summary>
    public static readonly TimeSpan Good = TimeSpan.FromMinutes(1);

    private TimeSpan _step = First;

    /// <summary>The wait after a connection that held for so long (zero: none came about).</summary>
    public TimeSpan Next(TimeSpan heldFor)
    {
        _step = heldFor >= Good ? First : _step;
        var wait = _step * (0.5 + (0.5 * random.NextDouble()));
        _step = _step * 2 < Longest ? _step * 2 : Longest;
        return wait;
    }
}
