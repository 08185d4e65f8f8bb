using System.Text.Json;
using OnboardHeat.Engine.Options.Table;

namespace OnboardHeat.Engine.Options;

/// <summary>
/// The configuration as read: options, where each was stated, and all problems at once. Walked against the table of
/// known keys, because the framework's binder stops at the first bad value, takes NaN and tells of unknown keys one
/// level at a time.
/// </summary>
public sealed class Configuration
{
    /// <summary>Environment variables that override single values begin so; <c>__</c> parts the sections.</summary>
    public const string EnvironmentPrefix = "ONBOARDHEAT__";

    /// <summary>Larger than any configuration that a person wrote.</summary>
    private const int MaxBytes = 1 << 20;

    private Configuration(OnboardHeatOptions options, OptionReading reading)
    {
        Options = options;
        Problems = reading.Problems;
        Stated = reading.Stated;
    }

    /// <summary>The options; not to be used when there are problems.</summary>
    public OnboardHeatOptions Options { get; }

    /// <summary>Everything that is wrong, a line each with its place; empty when all is in order.</summary>
    public IReadOnlyList<string> Problems { get; }

    /// <summary>
    /// The place of every stated key: <c>Tank:VolumeLitres</c> to <c>file:line:column</c> or the environment variable.
    /// </summary>
    public IReadOnlyDictionary<string, string> Stated { get; }

    /// <summary>Reads a file (or none) and the environment over it.</summary>
    public static Configuration Load(
        string? file, IEnumerable<KeyValuePair<string, string>> environment, ConfigurationUse use)
    {
        try
        {
            if (file is not null && new FileInfo(file) is { Exists: true, Length: > MaxBytes } info)
            {
                return Unreadable(file, $"is {info.Length} bytes long; this is no configuration");
            }

            return Read(
                file ?? "configuration", file is null ? "{}"u8.ToArray() : File.ReadAllBytes(file), environment, use);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException)
        {
            return Unreadable(file ?? "", $"cannot be read: {e.Message}");
        }
    }

    /// <summary>Reads the bytes of a file and the environment over it.</summary>
    public static Configuration Read(
        string file, byte[] bytes, IEnumerable<KeyValuePair<string, string>> environment, ConfigurationUse use)
    {
        ArgumentNullException.ThrowIfNull(bytes);
        ArgumentNullException.ThrowIfNull(environment);
        var options = new OnboardHeatOptions();
        bytes = bytes.AsSpan().StartsWith("\uFEFF"u8) ? bytes[3..] : bytes;
        var reading = new OptionReading(file, bytes);
        TakeFile(bytes, options, reading);
        foreach (var (name, text) in environment
            .Where(e => e.Key.StartsWith(EnvironmentPrefix, StringComparison.Ordinal))
            .OrderBy(e => e.Key, StringComparer.Ordinal))
        {
            var steps = name[EnvironmentPrefix.Length..].Split("__");
            reading.State(string.Join(':', steps), name);
            OptionTable.Root.TakeText(text, options, steps, 0, reading);
        }

        if (use == ConfigurationUse.Run)
        {
            RequireForRun(options, reading);
        }

        OptionRelations.Check(options, reading);
        return new Configuration(options, reading);
    }

    /// <summary>Every key with its value and range, as in force.</summary>
    public IReadOnlyList<OptionFacts> Describe() => OptionTable.Describe(Options);

    private static Configuration Unreadable(string file, string what)
    {
        var reading = new OptionReading(file, []);
        reading.Problem(file, "", what);
        return new Configuration(new OnboardHeatOptions(), reading);
    }

    private static void TakeFile(byte[] bytes, OnboardHeatOptions options, OptionReading reading)
    {
        var asPeopleWrite =
            new JsonReaderOptions { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true };
        var json = new Utf8JsonReader(bytes, asPeopleWrite);
        try
        {
            json.Read();
            OptionTable.Root.Take(ref json, options, "", reading);
            while (json.Read())
            {
            }
        }
        catch (JsonException e)
        {
            reading.Problem(
                reading.Place(IndexOf(bytes, e)), "", "is no JSON from here on: " + FirstSentence(e.Message));
        }
        catch (InvalidOperationException)
        {
            // The JSON reader leaves text alone until somebody asks for it; bytes that are no UTF-8 show only then.
            reading.Problem(reading.Place(json), "", "holds text that is no UTF-8");
        }
    }

    private static void RequireForRun(OnboardHeatOptions options, OptionReading reading)
    {
        if (!reading.Stated.ContainsKey("Tank:VolumeLitres"))
        {
            reading.Problem("Tank:VolumeLitres", "must be stated; every figure scales with it");
        }

        if (options.Probes.Count == 0)
        {
            reading.Problem("Probes", "must name at least one probe; 'onboardheat probes' lists what is on the bus");
        }
    }

    private static long IndexOf(byte[] bytes, JsonException e)
    {
        long index = 0;
        for (var line = 0L; line < (e.LineNumber ?? 0); line++)
        {
            index += bytes.AsSpan((int)index).IndexOf((byte)'\n') + 1;
        }

        return Math.Min(bytes.Length, index + (e.BytePositionInLine ?? 0));
    }

    private static string FirstSentence(string message)
    {
        var end = message.IndexOf(". ", StringComparison.Ordinal);
        return end < 0 ? message : message[..end];
    }
}
