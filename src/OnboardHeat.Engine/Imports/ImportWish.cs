namespace OnboardHeat.Engine.Imports;

/// <summary>
/// What a person says of the files to import; what is left out is found out, and a guess that could be wrong is
/// refused.
/// </summary>
public sealed record ImportWish
{
    /// <summary>Which columns are what.</summary>
    public IReadOnlyList<ImportMapping> Mappings { get; init; } = [];

    /// <summary>The zone of times that have no offset; null: such times are refused.</summary>
    public ImportZone? Zone { get; init; }

    /// <summary>The decimal mark, a point or a comma; null: as the numbers look.</summary>
    public char? DecimalMark { get; init; }

    /// <summary>The mark between columns; null: as the lines look.</summary>
    public char? Separator { get; init; }

    /// <summary>
    /// Whether dates with slashes or dashes have the month first; null: as the dates themselves tell.
    /// </summary>
    public bool? IsMonthFirst { get; init; }
}
