using OnboardHeat.History.Files;

namespace OnboardHeat.History.Backup;

/// <summary>
/// Where a month may be put. Files, runs and blocks are numbered through, and numbers must rise from file to file; a
/// month whose numbers are those of others comes from another record, or this one began anew.
/// </summary>
internal static class RestorePlace
{
    private const string Advice =
        "this record began anew or is another van's; with no daemon running, restore into an empty folder (move this"
            + " record aside first)";

    /// <summary>Whether the month itself is there already.</summary>
    /// <exception cref="IOException">Another one has its place.</exception>
    public static bool IsTaken(RecordShelf shelf, MonthName name, About about)
    {
        var there = shelf.Names.Where(other => other.Sequence == name.Sequence).ToArray();
        if (there.Length == 0)
        {
            return false;
        }

        return there[0] == name && shelf.Take(name).ReadAbout() is { } own && own.FirstNumber == about.FirstNumber
            ? true
            : throw new IOException($"{there[0].Data} has the place of {name.Data}: {Advice}");
    }

    /// <summary>Why a month cannot stand between its neighbours; null when it can.</summary>
    public static string? Problem(RecordBook book, MonthName name, FileHealth health)
    {
        var shelf = book.Shelf;
        var below = shelf.Names.Where(other => other.CompareTo(name) < 0).SelectMany(shelf.Spans).LastOrDefault();
        var above = shelf.Names.Where(other => other.CompareTo(name) > 0).SelectMany(shelf.Spans).FirstOrDefault();
        if (!book.IsToRead && above is null)
        {
            return $"{name.Data} is newer than what the daemon writes: restore it while none runs";
        }

        if (health.Runs.Count == 0)
        {
            return null;
        }

        var (first, last) = (health.Runs[0], health.Runs[^1]);
        var isAfter = below is null || (below.LastNumber < first.FirstNumber && below.Run <= first.Run);
        var isBefore = above is null || (last.LastNumber < above.FirstNumber && last.Run <= above.Run);
        return isAfter && isBefore ? null : $"the numbers in {name.Data} overlap with those on record: {Advice}";
    }
}
