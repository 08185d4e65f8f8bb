namespace OnboardHeat.Glance;

/// <summary>Where the page listens and who may read it.</summary>
public sealed record GlanceSettings
{
    /// <summary>The van's id.</summary>
    public required string VanId { get; init; }

    /// <summary>Port; 0 takes a free one (tests).</summary>
    public required int Port { get; init; }

    /// <summary>Address to listen on; loopback until told otherwise.</summary>
    public required string Listen { get; init; }

    /// <summary>Whether anyone on the network may read without pairing.</summary>
    public required bool IsReadingOpen { get; init; }

    /// <summary>
    /// The longest time between two scans, while the van stands. A newest picture that is half as old again is overdue:
    /// the page then says that figures are old although the daemon answers, so that a judging loop that hangs is seen.
    /// </summary>
    public TimeSpan LongestScanPeriod { get; init; } = TimeSpan.FromSeconds(10);

    /// <summary>File of the paired phones; null keeps them in memory only (demo).</summary>
    public string? PhonesFile { get; init; }

    /// <summary>Certificate for HTTPS (PEM with its key beside it), null for plain HTTP.</summary>
    public string? CertificateFile { get; init; }

    /// <summary>Key of the certificate, PEM.</summary>
    public string? CertificateKeyFile { get; init; }
}
