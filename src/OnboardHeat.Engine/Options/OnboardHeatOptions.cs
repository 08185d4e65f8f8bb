namespace OnboardHeat.Engine.Options;

/// <summary>
/// Everything that an owner states about a van, key by key as in <c>onboardheat.json</c>. Defaults stand here and
/// nowhere else.
/// </summary>
public sealed class OnboardHeatOptions
{
    /// <summary>Which van this is.</summary>
    public VanOptions Van { get; } = new();

    /// <summary>The hot-water tank.</summary>
    public TankOptions Tank { get; } = new();

    /// <summary>How a shower is taken.</summary>
    public ShowerOptions Shower { get; } = new();

    /// <summary>The coolant circuit and its parts.</summary>
    public CircuitOptions Circuit { get; } = new();

    /// <summary>The bus of the temperature probes.</summary>
    public OneWireOptions OneWire { get; } = new();

    /// <summary>Which probe sits where; at least one for <c>run</c>. Each channel and each ROM once.</summary>
    public IReadOnlyList<ProbeOptions> Probes { get; set; } = [];

    /// <summary>Which contact is wired to which pin; may be empty. Each signal and each pin once.</summary>
    public IReadOnlyList<SignalOptions> Signals { get; set; } = [];

    /// <summary>Buzzer, lamp, heartbeat and button.</summary>
    public OutputOptions Outputs { get; } = new();

    /// <summary>The record.</summary>
    public HistoryOptions History { get; } = new();

    /// <summary>Publishing over MQTT.</summary>
    public MessagingOptions Messaging { get; } = new();

    /// <summary>The page in the van.</summary>
    public GlanceOptions Glance { get; } = new();

    /// <summary>The door for commands beside a running daemon.</summary>
    public ControlOptions Control { get; } = new();

    /// <summary>The log beside the journal.</summary>
    public LogOptions Log { get; } = new();
}
