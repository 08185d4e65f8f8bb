namespace OnboardHeat.Engine.Options.Table;

/// <summary>What must hold between keys. Each key by itself is in order when these are checked.</summary>
internal static class OptionRelations
{
    /// <summary>
    /// Kelvin that the relief valve must lie above water in normal use: the alarm stands 2 K below it and clears at 5
    /// K.
    /// </summary>
    public const double ReliefMarginK = 5;

    /// <summary>Notes every relation that does not hold.</summary>
    public static void Check(OnboardHeatOptions options, OptionReading reading)
    {
        CheckRelief(options, reading);
        CheckOnce(options.Circuit.Parts.Select(p => p.Id), "Circuit:Parts", "Id", reading);
        CheckOnce(options.Probes.Select(p => p.Channel), "Probes", "Channel", reading);
        CheckOnce(options.Probes.Select(p => p.Rom), "Probes", "Rom", reading);
        CheckOnce(options.Signals.Select(s => s.Signal), "Signals", "Signal", reading);
        CheckPins(options, reading);
        if (options.OneWire.ParkedScanSeconds < options.OneWire.ScanSeconds)
        {
            reading.Problem(
                "OneWire:ParkedScanSeconds",
                "is shorter than OneWire:ScanSeconds; a standing van is not read more often");
        }

        if (options.Outputs.DisplayHeight is not (null or 32 or 64))
        {
            reading.Problem("Outputs:DisplayHeight", "is neither 32 nor 64");
        }

        if (options.Glance is { CertificateKeyFile: not null, CertificateFile: null })
        {
            reading.Problem("Glance:CertificateKeyFile", "needs Glance:CertificateFile");
        }

        CheckMessaging(options.Messaging, reading);
    }

    private static void CheckMessaging(MessagingOptions messaging, OptionReading reading)
    {
        if (messaging.EmbeddedBroker && messaging.Host is not null)
        {
            reading.Problem("Messaging:EmbeddedBroker", "does not go with Messaging:Host; state one of the two");
        }

        if (messaging.PasswordFile is not null && messaging.UserName is null)
        {
            reading.Problem("Messaging:PasswordFile", "needs Messaging:UserName");
        }

        if (messaging.CaFile is not null && !messaging.Tls)
        {
            reading.Problem("Messaging:CaFile", "needs Messaging:Tls");
        }
    }

    private static void CheckRelief(OnboardHeatOptions options, OptionReading reading)
    {
        var (key, celsius) = options.Shower.UsableTopCelsius >= options.Shower.MixedCelsius
            ? ("Shower:UsableTopCelsius", options.Shower.UsableTopCelsius)
            : ("Shower:MixedCelsius", options.Shower.MixedCelsius);
        if (options.Tank.ReliefCelsius < celsius + ReliefMarginK)
        {
            var isStated = reading.Stated.ContainsKey("Tank:ReliefCelsius");
            reading.Problem(
                isStated ? "Tank:ReliefCelsius" : key,
                (isStated ? "is " : "Tank:ReliefCelsius is ")
                    + FormattableString.Invariant($"{options.Tank.ReliefCelsius} and must lie {ReliefMarginK} K ")
                    + FormattableString.Invariant($"above {key}, which is {celsius}"));
        }
    }

    private static void CheckOnce(IEnumerable<string> values, string list, string key, OptionReading reading)
    {
        var first = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var (index, value) in values.Index())
        {
            if (value.Length > 0 && !first.TryAdd(value, index))
            {
                reading.Problem($"{list}:{index}:{key}", $"'{value}' stands already in {list}:{first[value]}");
            }
        }
    }

    private static void CheckPins(OnboardHeatOptions options, OptionReading reading)
    {
        var outputs = options.Outputs;
        IEnumerable<(string Path, int? Pin)> pins =
        [
            .. from signal in options.Signals.Index()
               let path = $"Signals:{signal.Index}:Pin"
               where reading.Stated.ContainsKey(path)
               select (path, (int?)signal.Item.Pin),
            ("Outputs:BuzzerPin", outputs.BuzzerPin), ("Outputs:LampPin", outputs.LampPin),
            ("Outputs:HeartbeatPin", outputs.HeartbeatPin), ("Outputs:ButtonPin", outputs.ButtonPin),
        ];
        var first = new Dictionary<int, string>();
        foreach (var (path, pin) in pins)
        {
            if (pin is { } number && !first.TryAdd(number, path))
            {
                reading.Problem(path, $"pin {number} is taken by {first[number]}");
            }
        }
    }
}
