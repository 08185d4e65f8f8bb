namespace OnboardHeat.Engine.Options.Table;

/// <summary>What the table knows of one key, for listings and for comparing with the schema.</summary>
/// <param name="Path">The key with its sections, <c>Tank:VolumeLitres</c>; a list's items have <c>[]</c>.</param>
/// <param name="Type">
/// The JSON type: <c>object</c>, <c>array</c>, <c>number</c>, <c>integer</c>, <c>boolean</c> or <c>string</c>.
/// </param>
/// <param name="Value">The value as JSON writes it; null where there is none.</param>
/// <param name="Min">Least number that is taken, or fewest items; null where there is no such limit.</param>
/// <param name="Max">Greatest number that is taken, most items, or longest text.</param>
/// <param name="IsRequired">Whether a list's item must state it.</param>
public sealed record OptionFacts(string Path, string Type, string? Value, double? Min, double? Max, bool IsRequired)
{
    /// <summary>The unit in words (<c>litres per minute</c>); empty where the value has none.</summary>
    public string Unit { get; init; } = "";
}
