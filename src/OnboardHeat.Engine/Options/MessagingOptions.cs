namespace OnboardHeat.Engine.Options;

/// <summary>Publishing over MQTT. Off until a host is given or the embedded broker is asked for.</summary>
public sealed class MessagingOptions
{
    /// <summary>Name or address of the broker; left out: none. Not together with <c>EmbeddedBroker</c>.</summary>
    public string? Host { get; set; }

    /// <summary>Port of the broker, 1 to 65535; default 1883 (8883 is usual with <c>Tls</c>).</summary>
    public int Port { get; set; } = 1883;

    /// <summary>User name at the broker; left out: none.</summary>
    public string? UserName { get; set; }

    /// <summary>
    /// File that holds the password, absolute; left out: none. Needs <c>UserName</c>. A file, because configuration
    /// gets copied about.
    /// </summary>
    public string? PasswordFile { get; set; }

    /// <summary>Whether the connection is encrypted; default false.</summary>
    public bool Tls { get; set; }

    /// <summary>
    /// File of certificates (PEM) to trust in place of the system's, absolute; needs <c>Tls</c>; left out: the
    /// system's. For a broker whose certificate its owner made.
    /// </summary>
    public string? CaFile { get; set; }

    /// <summary>Whether a broker runs inside the daemon, on loopback only; default false.</summary>
    public bool EmbeddedBroker { get; set; }

    /// <summary>
    /// Whether actions are taken from the broker; default false. Who can publish there can then acknowledge an alarm.
    /// </summary>
    public bool AcceptActions { get; set; }
}
