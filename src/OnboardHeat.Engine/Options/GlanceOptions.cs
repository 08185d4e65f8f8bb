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
}
