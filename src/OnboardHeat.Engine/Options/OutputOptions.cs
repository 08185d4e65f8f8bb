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

    /// <summary>
    /// Whether the <c>frost</c> warning sounds with the engine off too; default true: a frozen tank bursts unheard.
    /// </summary>
    public bool FrostSounds { get; set; } = true;

    /// <summary>
    /// Whether warnings of the record (<c>history-stopped</c>, <c>history-damaged</c>) sound with the engine off too;
    /// default false.
    /// </summary>
    public bool HistorySounds { get; set; }

    /// <summary>Height of the display in pixels, 32 or 64 (128 wide); left out: there is none.</summary>
    public int? DisplayHeight { get; set; }

    /// <summary>I2C bus of the display, 0 to 63; default 1, the one on the header.</summary>
    public int DisplayBus { get; set; } = 1;

    /// <summary>Address of the display on its bus, 8 to 119; default 60 (0x3C; some boards have 61).</summary>
    public int DisplayAddress { get; set; } = 60;

    /// <summary>
    /// Whether the display stays on with the engine off; default true. An alarm that sounds lights it all the same.
    /// </summary>
    public bool DisplayParked { get; set; } = true;
}
