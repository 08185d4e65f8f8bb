namespace OnboardHeat.Messaging.Link;

/// <summary>Where the broker is and how to get in.</summary>
internal sealed record LinkSettings
{
    public required string Host { get; init; }

    public required int Port { get; init; }

    /// <summary>
    /// Our name at the broker. One at a time: a second daemon of the same van throws the first out, and both say so.
    /// </summary>
    public required string ClientId { get; init; }

    /// <summary>Topic that says whether anybody judges; the will is spoken on it.</summary>
    public required string AliveTopic { get; init; }

    public string? UserName { get; init; }

    public string? PasswordFile { get; init; }

    /// <summary>A password made at start, for the broker inside the daemon; no file then.</summary>
    public string? Password { get; init; }

    public bool IsEncrypted { get; init; }

    /// <summary>Certificates to trust in place of the system's; null: the system's.</summary>
    public string? CaFile { get; init; }

    /// <summary>How the broker is named in a line of the log.</summary>
    public string Name => $"{Host}:{Port}";
}
