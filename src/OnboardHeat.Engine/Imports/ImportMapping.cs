using OnboardHeat.Core.Scans;

namespace OnboardHeat.Engine.Imports;

/// <summary>
/// What a person says of a column: <c>Temp 1=tank_top</c>, <c>boiler.csv:2=tank_top</c>, <c>boiler.csv=tank_top</c>.
/// </summary>
/// <param name="Source">
/// File, column by name or number from 1, or both; empty: the only column of readings there is.
/// </param>
/// <param name="Target">
/// A channel or signal, <c>time</c>, <c>date</c> (the time of day stands in <c>time</c>) or <c>elapsed_s</c>.
/// </param>
public sealed record ImportMapping(string Source, string Target)
{
    /// <summary>Where the date stands when the time of day has a column of its own.</summary>
    public const string Date = "date";

    /// <summary>Where the time stands.</summary>
    public const string Time = "time";

    /// <summary>Seconds since the recording began.</summary>
    public const string Elapsed = "elapsed_s";

    /// <summary>Reads the written form; false where the target is none that there is.</summary>
    public static bool TryParse(string text, out ImportMapping mapping)
    {
        ArgumentNullException.ThrowIfNull(text);
        var split = text.LastIndexOf('=');
        mapping = new ImportMapping(split < 0 ? "" : text[..split].Trim(), text[(split + 1)..].Trim());
        return IsTarget(mapping.Target);
    }

    /// <summary>Whether a column can be this.</summary>
    public static bool IsTarget(string name) =>
        name is Date or Time or Elapsed || Channels.TryParse(name, out _) || Signals.TryParse(name, out _);
}
