namespace OnboardHeat.Messaging.Link;

/// <summary>What a connection may take: time, size, waiting messages.</summary>
internal static class LinkLimits
{
    /// <summary>
    /// Longest wait for any answer of the broker: many round trips over a bad phone link, and well under a minute of
    /// silence.
    /// </summary>
    public static readonly TimeSpan Answer = TimeSpan.FromSeconds(10);

    /// <summary>A stopping daemon has 6 s in all; the goodbye gets this much of it.</summary>
    public static readonly TimeSpan Goodbye = TimeSpan.FromSeconds(2);

    /// <summary>Without a word for so long, the broker is asked whether it is there.</summary>
    public static readonly TimeSpan KeepAlive = TimeSpan.FromSeconds(30);

    /// <summary>
    /// How long the broker waits before it speaks the will: a short loss on a mountain road is not worth a word.
    /// </summary>
    public static readonly TimeSpan WillDelay = TimeSpan.FromSeconds(15);

    /// <summary>
    /// How long the broker keeps the session; longer than the will's delay, else the session's end speaks it.
    /// </summary>
    public static readonly TimeSpan SessionExpiry = TimeSpan.FromSeconds(60);

    /// <summary>
    /// Largest packet that is let in. What we ask for is under 5 KB; the broker is told, and held to it.
    /// </summary>
    public const int MaxPacketBytes = 64 * 1024;

    /// <summary>Questions that wait to be judged; a flood beyond is thrown away.</summary>
    public const int MaxQuestions = 16;
}
