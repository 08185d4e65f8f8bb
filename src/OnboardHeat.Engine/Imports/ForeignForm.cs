namespace OnboardHeat.Engine.Imports;

/// <summary>How a logger's file is to be read.</summary>
internal sealed record ForeignForm
{
    /// <summary>The file as the person named it.</summary>
    public required string File { get; init; }

    /// <summary>The mark between columns.</summary>
    public required char Separator { get; init; }

    /// <summary>Rows before the first reading: a preamble, a header.</summary>
    public required int RowsBefore { get; init; }

    /// <summary>Names of the columns, from the header or their numbers.</summary>
    public required IReadOnlyList<string> Names { get; init; }

    /// <summary>Whether the names come from a header.</summary>
    public required bool HasHeader { get; init; }

    /// <summary>A point or a comma.</summary>
    public required char DecimalMark { get; init; }

    /// <summary>The column of the time, or of the date where the time of day has its own.</summary>
    public required int TimeColumn { get; init; }

    /// <summary>The column of the time of day; null where it stands with the date.</summary>
    public required int? OfDayColumn { get; init; }

    /// <summary>How times are written.</summary>
    public required ForeignTimeKind TimeKind { get; init; }

    /// <summary>Whether the month comes before the day.</summary>
    public required bool IsMonthFirst { get; init; }

    /// <summary>What each column is; null for those that are left out.</summary>
    public required IReadOnlyList<string?> Targets { get; init; }

    /// <summary>The text of a row's time.</summary>
    public string TimeText(IReadOnlyList<string> cells) =>
        OfDayColumn is { } ofDay ? $"{cells[TimeColumn]} {cells[ofDay]}" : cells[TimeColumn];
}
