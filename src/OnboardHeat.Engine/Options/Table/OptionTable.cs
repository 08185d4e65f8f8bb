namespace OnboardHeat.Engine.Options.Table;

/// <summary>
/// Every key of the configuration at any depth, with its range. A new option is added here, in its class and in the
/// schema.
/// </summary>
internal static class OptionTable
{
    private const int PinMax = 27;
    private const int BusMax = 63;
    private const int PortMax = 65_535;
    private const int ListMax = 32;

    private static readonly OptionKeys<PartOptions> s_part = new(
        new OptionText<PartOptions>("Id", TextForm.Id, o => o.Id, (o, v) => o.Id = v, isRequired: true),
        new OptionText<PartOptions>("Name", TextForm.Words, o => o.Name, (o, v) => o.Name = v),
        new OptionText<PartOptions>("On", TextForm.ChannelName, o => o.On, (o, v) => o.On = v, isRequired: true),
        new OptionNumber<PartOptions>(
            "MaxCelsius", 30, 200, "degrees Celsius", o => o.MaxCelsius, (o, v) => o.MaxCelsius = v, isRequired: true));

    private static readonly OptionKeys<ProbeOptions> s_probe = new(
        new OptionText<ProbeOptions>(
            "Channel", TextForm.ChannelName, o => o.Channel, (o, v) => o.Channel = v, isRequired: true),
        new OptionText<ProbeOptions>("Rom", TextForm.Rom, o => o.Rom, (o, v) => o.Rom = v, isRequired: true),
        new OptionNumber<ProbeOptions>(
            "OffsetKelvin", -5, 5, "kelvin", o => o.OffsetKelvin, (o, v) => o.OffsetKelvin = v));

    private static readonly OptionKeys<SignalOptions> s_signal = new(
        new OptionText<SignalOptions>(
            "Signal", TextForm.SignalName, o => o.Signal, (o, v) => o.Signal = v, isRequired: true),
        new OptionWhole<SignalOptions>("Pin", 0, PinMax, o => o.Pin, (o, v) => o.Pin = v, isRequired: true),
        new OptionSwitch<SignalOptions>("ActiveLow", o => o.ActiveLow, (o, v) => o.ActiveLow = v));

    /// <summary>The top of the tree.</summary>
    public static OptionKeys<OnboardHeatOptions> Root { get; } = new(
        new OptionSection<OnboardHeatOptions, VanOptions>("Van", o => o.Van, new(
            new OptionText<VanOptions>("Id", TextForm.Id, o => o.Id, (o, v) => o.Id = v))),
        new OptionSection<OnboardHeatOptions, TankOptions>("Tank", o => o.Tank, Tank()),
        new OptionSection<OnboardHeatOptions, ShowerOptions>("Shower", o => o.Shower, Shower()),
        new OptionSection<OnboardHeatOptions, CircuitOptions>("Circuit", o => o.Circuit, new(
            new OptionNumber<CircuitOptions>(
                "CoolantMaxCelsius", 60, 140, "degrees Celsius", o => o.CoolantMaxCelsius,
                (o, v) => o.CoolantMaxCelsius = v),
            new OptionList<CircuitOptions, PartOptions>("Parts", ListMax, (o, v) => o.Parts = v, s_part))),
        new OptionSection<OnboardHeatOptions, OneWireOptions>("OneWire", o => o.OneWire, new(
            new OptionText<OneWireOptions>("Bus", TextForm.BusName, o => o.Bus, (o, v) => o.Bus = v),
            new OptionNumber<OneWireOptions>(
                "ScanSeconds", 1, 30, "seconds", o => o.ScanSeconds, (o, v) => o.ScanSeconds = v),
            new OptionNumber<OneWireOptions>(
                "ParkedScanSeconds", 1, 60, "seconds", o => o.ParkedScanSeconds, (o, v) => o.ParkedScanSeconds = v))),
        new OptionList<OnboardHeatOptions, ProbeOptions>("Probes", ListMax, (o, v) => o.Probes = v, s_probe),
        new OptionList<OnboardHeatOptions, SignalOptions>("Signals", ListMax, (o, v) => o.Signals = v, s_signal),
        new OptionSection<OnboardHeatOptions, OutputOptions>("Outputs", o => o.Outputs, Outputs()),
        new OptionSection<OnboardHeatOptions, HistoryOptions>("History", o => o.History, new(
            new OptionText<HistoryOptions>("Folder", TextForm.AbsolutePath, o => o.Folder, (o, v) => o.Folder = v),
            new OptionWhole<HistoryOptions>("KeepMonths", 1, 240, o => o.KeepMonths, (o, v) => o.KeepMonths = v))),
        new OptionSection<OnboardHeatOptions, MessagingOptions>("Messaging", o => o.Messaging, Messaging()),
        new OptionSection<OnboardHeatOptions, GlanceOptions>("Glance", o => o.Glance, new(
            new OptionWhole<GlanceOptions>("Port", 1, PortMax, o => o.Port, (o, v) => o.Port = v),
            new OptionText<GlanceOptions>("Listen", TextForm.Address, o => o.Listen, (o, v) => o.Listen = v),
            new OptionSwitch<GlanceOptions>("OpenReading", o => o.OpenReading, (o, v) => o.OpenReading = v),
            new OptionText<GlanceOptions>(
                "CertificateFile", TextForm.AbsolutePath, o => o.CertificateFile, (o, v) => o.CertificateFile = v),
            new OptionText<GlanceOptions>(
                "CertificateKeyFile", TextForm.AbsolutePath, o => o.CertificateKeyFile,
                (o, v) => o.CertificateKeyFile = v))),
        new OptionSection<OnboardHeatOptions, ControlOptions>("Control", o => o.Control, new(
            new OptionText<ControlOptions>("Socket", TextForm.SocketPath, o => o.Socket, (o, v) => o.Socket = v))),
        new OptionSection<OnboardHeatOptions, LogOptions>("Log", o => o.Log, new(
            new OptionText<LogOptions>("File", TextForm.AbsolutePath, o => o.File, (o, v) => o.File = v))));

    /// <summary>Every key with what is known of it; the values are those of the given options.</summary>
    public static IReadOnlyList<OptionFacts> Describe(OnboardHeatOptions options)
    {
        var facts = new List<OptionFacts>();
        Root.Describe(options, "", facts);
        return facts;
    }

    private static OptionKeys<TankOptions> Tank() => new(
        new OptionNumber<TankOptions>(
            "VolumeLitres", 1, 500, "litres", o => o.VolumeLitres, (o, v) => o.VolumeLitres = v),
        new OptionNumber<TankOptions>(
            "ColdSupplyCelsius", 0, 40, "degrees Celsius", o => o.ColdSupplyCelsius, (o, v) => o.ColdSupplyCelsius = v),
        new OptionNumber<TankOptions>(
            "VesselMassKg", 0, 200, "kilograms", o => o.VesselMassKg, (o, v) => o.VesselMassKg = v),
        new OptionNumber<TankOptions>(
            "ReliefCelsius", 50, 120, "degrees Celsius", o => o.ReliefCelsius, (o, v) => o.ReliefCelsius = v));

    private static OptionKeys<ShowerOptions> Shower() => new(
        new OptionNumber<ShowerOptions>(
            "MixedCelsius", 25, 60, "degrees Celsius", o => o.MixedCelsius, (o, v) => o.MixedCelsius = v),
        new OptionNumber<ShowerOptions>(
            "FlowLitresPerMinute", 0.1, 30, "litres per minute", o => o.FlowLitresPerMinute,
            (o, v) => o.FlowLitresPerMinute = v),
        new OptionNumber<ShowerOptions>(
            "UsefulMinutes", 0.5, 60, "minutes", o => o.UsefulMinutes, (o, v) => o.UsefulMinutes = v),
        new OptionNumber<ShowerOptions>(
            "UsableTopCelsius", 25, 70, "degrees Celsius", o => o.UsableTopCelsius, (o, v) => o.UsableTopCelsius = v));

    private static OptionKeys<OutputOptions> Outputs() => new(
        new OptionWhole<OutputOptions>("BuzzerPin", 0, PinMax, o => o.BuzzerPin, (o, v) => o.BuzzerPin = v),
        new OptionWhole<OutputOptions>("LampPin", 0, PinMax, o => o.LampPin, (o, v) => o.LampPin = v),
        new OptionWhole<OutputOptions>("HeartbeatPin", 0, PinMax, o => o.HeartbeatPin, (o, v) => o.HeartbeatPin = v),
        new OptionWhole<OutputOptions>("ButtonPin", 0, PinMax, o => o.ButtonPin, (o, v) => o.ButtonPin = v),
        new OptionSwitch<OutputOptions>("FrostSounds", o => o.FrostSounds, (o, v) => o.FrostSounds = v),
        new OptionSwitch<OutputOptions>("HistorySounds", o => o.HistorySounds, (o, v) => o.HistorySounds = v),
        new OptionWhole<OutputOptions>("DisplayHeight", 32, 64, o => o.DisplayHeight, (o, v) => o.DisplayHeight = v),
        new OptionWhole<OutputOptions>("DisplayBus", 0, BusMax, o => o.DisplayBus, (o, v) => o.DisplayBus = v),
        new OptionWhole<OutputOptions>("DisplayAddress", 8, 119, o => o.DisplayAddress, (o, v) => o.DisplayAddress = v),
        new OptionSwitch<OutputOptions>("DisplayParked", o => o.DisplayParked, (o, v) => o.DisplayParked = v));

    private static OptionKeys<MessagingOptions> Messaging() => new(
        new OptionText<MessagingOptions>("Host", TextForm.HostName, o => o.Host, (o, v) => o.Host = v),
        new OptionWhole<MessagingOptions>("Port", 1, PortMax, o => o.Port, (o, v) => o.Port = v),
        new OptionText<MessagingOptions>("UserName", TextForm.Words, o => o.UserName, (o, v) => o.UserName = v),
        new OptionText<MessagingOptions>(
            "PasswordFile", TextForm.AbsolutePath, o => o.PasswordFile, (o, v) => o.PasswordFile = v),
        new OptionSwitch<MessagingOptions>("Tls", o => o.Tls, (o, v) => o.Tls = v),
        new OptionText<MessagingOptions>("CaFile", TextForm.AbsolutePath, o => o.CaFile, (o, v) => o.CaFile = v),
        new OptionSwitch<MessagingOptions>("EmbeddedBroker", o => o.EmbeddedBroker, (o, v) => o.EmbeddedBroker = v),
        new OptionSwitch<MessagingOptions>("AcceptActions", o => o.AcceptActions, (o, v) => o.AcceptActions = v));
}
