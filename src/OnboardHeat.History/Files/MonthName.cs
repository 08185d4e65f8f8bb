using System.Globalization;

namespace OnboardHeat.History.Files;

/// <summary>
/// Name of a file of the record: <c>00007-2026-05.db</c>. The number orders the files, as run and elapsed time order
/// what is in them; the month is a label from a trusted clock, or <c>undated</c>. A clock that jumps back makes a new
/// number, never an older file longer.
/// </summary>
internal readonly record struct MonthName(int Sequence, string Label) : IComparable<MonthName>
{
    /// <summary>Label of what was recorded while no clock could be trusted.</summary>
    public const string Undated = "undated";

    private const string Ending = ".db";

    /// <summary>The file with the data.</summary>
    public string Data => string.Create(CultureInfo.InvariantCulture, $"{Sequence:00000}-{Label}{Ending}");

    /// <summary>The engine's log beside it: it holds committed data.</summary>
    public string Log => string.Create(CultureInfo.InvariantCulture, $"{Sequence:00000}-{Label}-log{Ending}");

    /// <summary>What is carried over from a damaged file, until it takes its place.</summary>
    public string CarriedOver => Data + ".new";

    /// <summary>The log of that file while it is made.</summary>
    public string CarriedOverLog => Data + ".new-log";

    /// <summary>What is restored from a backup, until it is verified and takes its place.</summary>
    public string Restored => Data + ".restored";

    /// <summary>The log of that file while it is written.</summary>
    public string RestoredLog => Data + ".restored-log";

    /// <summary>Months since year 0 by the label; null when undated.</summary>
    public int? Month => Label != Undated
        ? (int.Parse(Label.AsSpan(0, 4), CultureInfo.InvariantCulture) * 12) + int.Parse(Label.AsSpan(5),
            CultureInfo.InvariantCulture)
        : null;

    /// <summary>Label of a date.</summary>
    public static string LabelOf(DateTimeOffset date) =>
        date.UtcDateTime.ToString("yyyy-MM", CultureInfo.InvariantCulture);

    public static bool TryParse(string file, out MonthName name)
    {
        name = default;
        if (!file.EndsWith(Ending, StringComparison.Ordinal) || file.Length < 10 || file[5] != '-'
            || !int.TryParse(file.AsSpan(0, 5), NumberStyles.None, CultureInfo.InvariantCulture, out var sequence))
        {
            return false;
        }

        var label = file[6..^Ending.Length];
        var isMonth = label.Length == 7 && label[4] == '-'
            && int.TryParse(label.AsSpan(0, 4), NumberStyles.None, CultureInfo.InvariantCulture, out _)
            && int.TryParse(label.AsSpan(5), NumberStyles.None, CultureInfo.InvariantCulture, out _);
        name = new MonthName(sequence, label);
        return isMonth || label == Undated;
    }

    public int CompareTo(MonthName other) => Sequence.CompareTo(other.Sequence);

    public override string ToString() => Data;
}
