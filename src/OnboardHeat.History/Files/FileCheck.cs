using LiteDB;
using OnboardHeat.History.Blocks;

namespace OnboardHeat.History.Files;

/// <summary>
/// Reads a file whole. Damage under the engine is silent: documents go missing, or come back with other values. So
/// every block's checksum is looked at, and the running numbers must follow each other without a gap.
/// </summary>
internal sealed class FileCheck
{
    private const int AtOnce = 100;

    private readonly List<string> _problems = [];
    private readonly List<BlockHeader> _scans = [];
    private readonly List<BlockHeader> _entries = [];
    private IReadOnlyDictionary<string, long> _cursors = new Dictionary<string, long>();
    private long _cursorsOf = -1;

    private FileCheck()
    {
    }

    /// <summary>
    /// Checks a file opened for looking. Nothing that the engine does with a damaged file leaves this method.
    /// </summary>
    public static FileHealth Of(Func<MonthFile> open)
    {
        var check = new FileCheck();
        About? about = null;
        try
        {
            using var file = open();
            about = file.ReadAbout();
            if (about is { Format: > About.CurrentFormat })
            {
                return new FileHealth { About = about, IsNewer = true };
            }

            check.Read(file, about);
        }
        catch (Exception e) when (IsEngineTrouble(e))
        {
            check._problems.Add($"the engine cannot read it ({e.GetType().Name}: {e.Message})");
        }

        return check.Conclude(about);
    }

    /// <summary>
    /// What the engine throws at damaged pages: measured with bit flips, anything from its own exceptions to index and
    /// cast errors. Errors of the card itself are among them; they are told apart by their type.
    /// </summary>
    public static bool IsEngineTrouble(Exception e) =>
        e is LiteException or IOException or InvalidDataException or IndexOutOfRangeException
        or InvalidCastException or ArgumentException or NullReferenceException or InvalidOperationException
        or OverflowException or KeyNotFoundException or OutOfMemoryException or NotSupportedException or FormatException
        or NotImplementedException;

    private void Read(MonthFile file, About? about)
    {
        var hours = ReadHours(file);
        Walk(from => file.ReadDigests(from, AtOnce), digest => digest.Number, digest =>
        {
            Note(digest.Entries, BlockKind.Entries, digest.Number, _entries);
            Note(digest.Rollups, BlockKind.Rollups, digest.Number, null);
            if (!hours.Remove(digest.Number))
            {
                _problems.Add($"scans of the hour at {digest.Number} are missing");
            }
        });
        foreach (var number in hours)
        {
            _problems.Add($"entries of the hour at {number} are missing");
        }

        Walk(from => file.ReadMinutes(from, AtOnce), minute => minute.Number, minute =>
        {
            Note(minute.Scans, BlockKind.Scans, minute.Number, _scans);
            Note(minute.Entries, BlockKind.Entries, minute.Number, _entries);
        });
        if (about is null && _scans.Count + _problems.Count > 0)
        {
            // A file without anything was made just before the power went; one with blocks was damaged.
            _problems.Add("it does not say what it is");
        }
    }

    private HashSet<long> ReadHours(MonthFile file)
    {
        var numbers = new HashSet<long>();
        Walk(from => file.ReadHours(from, AtOnce), hour => hour.Number, hour =>
        {
            Note(hour.Scans, BlockKind.Scans, hour.Number, _scans);
            numbers.Add(hour.Number);
        });
        return numbers;
    }

    /// <summary>
    /// Reads on in small batches; numbers that do not rise are a damaged index, which might never end.
    /// </summary>
    private void Walk<T>(Func<long, IReadOnlyList<T>> read, Func<T, long> numberOf, Action<T> take)
    {
        var next = 0L;
        while (true)
        {
            var batch = read(next);
            foreach (var item in batch)
            {
                if (numberOf(item) < next)
                {
                    _problems.Add("its index does not rise");
                    return;
                }

                take(item);
                next = numberOf(item) + 1;
            }

            if (batch.Count < AtOnce)
            {
                return;
            }
        }
    }

    private void Note(byte[] stored, BlockKind kind, long number, List<BlockHeader>? into)
    {
        if (!Block.TryOpen(stored, out var header, out var payload) || header.Kind != kind
            || header.FirstNumber != number)
        {
            _problems.Add($"a block of {kind} at {number} is damaged");
            return;
        }

        into?.Add(header);
        if (kind == BlockKind.Entries && header.LastNumber > _cursorsOf)
        {
            _cursorsOf = header.LastNumber;
            EntryCodec.Decode(header, payload.Span, out var cursors);
            _cursors = cursors;
        }
    }

    private FileHealth Conclude(About? about)
    {
        _scans.Sort((a, b) => a.FirstNumber.CompareTo(b.FirstNumber));
        _entries.Sort((a, b) => a.FirstNumber.CompareTo(b.FirstNumber));
        var next = about?.FirstNumber ?? 1;
        foreach (var block in _scans)
        {
            if (block.FirstNumber != next && !IsKnownGap(about, next, block.FirstNumber - 1))
            {
                _problems.Add($"minutes {next} to {block.FirstNumber - 1} are missing");
            }

            next = block.LastNumber + 1;
        }

        var nextEntry = about?.FirstEntry ?? 1;
        foreach (var block in _entries.Where(block => block.FirstEntry > 0))
        {
            if (block.FirstEntry < nextEntry || (block.FirstEntry > nextEntry && !(about?.Gaps.Count > 0)))
            {
                _problems.Add($"entries {nextEntry} to {block.FirstEntry - 1} are missing");
            }

            nextEntry = Math.Max(nextEntry, block.FirstEntry + block.Count);
        }

        // A gap that was noted when damage was set aside may lie behind the newest block.
        var lastGap = about?.Gaps.Count > 0 ? about.Gaps.Max(gap => gap.To) : 0;
        return new FileHealth
        {
            About = about,
            Problems = _problems,
            LastNumber = Math.Max(next - 1, lastGap),
            NextEntry = nextEntry,
            Runs = RunSpan.Of(_scans),
            Cursors = _cursors,
        };
    }

    private static bool IsKnownGap(About? about, long from, long to) =>
        from <= to && about is not null && about.Gaps.Any(gap => gap.From <= from && gap.To >= to);
}
