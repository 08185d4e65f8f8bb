namespace OnboardHeat.Engine.Options;

/// <summary>The page in the van.</summary>
public sealed class GlanceOptions
{
    /// <summary>Port of the page, 1 to 65535; default 8020.</summary>
    public int Port { get; set; } = 8020;

    /// <summary>
    /// Address it listens on; default <c>127.0.0.1</c>, this machine only. <c>0.0.0.0</c> opens it to the van's
    /// network.
    /// </summary>
    public string Listen { get; set; } = "127.0.0.1";

    /// <summary>
    /// Whether everybody in the van's network may read without pairing; default false. Actions always need pairing.
    /// </summary>
    public bool OpenReading { get; set; }

    /// <summary>
    /// Certificate for HTTPS, a PEM file; left out: plain HTTP. Worth its trouble where strangers share the van's
    /// network.
    /// </summary>
    public string? CertificateFile { get; set; }

    /// <summary>
    /// Private key of the certificate, a PEM file that only the daemon can read; left out: it stands in <see
    /// cref="CertificateFile"/> too.
    /// </summary>
    public string? CertificateKeyFile { get; set; }
}
