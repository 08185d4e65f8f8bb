namespace OnboardHeat.Engine.Options;

/// <summary>What the daemon drives itself. A pin left out is not used.</summary>
public sealed class OutputOptions
{
    /// <summary>Pin of the buzzer, processor numbering, 0 to 27.</summary>
    public int? BuzzerPin { get; set; }

    /// <summary>Pin of the warning lamp, processor numbering, 0 to 27.</summary>
    public int? LampPin { get; set; }

    /// <summary>
    /// Pin of the heartbeat, processor numbering, 0 to 27: it toggles as long as alarms are judged, for a hardware
    /// watchdog.
    /// </summary>
    public int? HeartbeatPin { get; set; }

    /// <summary>Pin of the acknowledge button (to ground), processor numbering, 0 to 27.</summary>
    public int? ButtonPin { get; set; }
}
