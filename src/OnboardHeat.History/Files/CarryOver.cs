using OnboardHeat.History.Blocks;
using OnboardHeat.History.Disk;

namespace OnboardHeat.History.Files;

/// <summary>
/// Sets a damaged file aside, never repaired in place and never deleted, and puts a new one in its place with every
/// block that is sound. The new one is finished before the old one is moved; a power cut in between is made good at the
/// next start.
/// </summary>
internal static class CarryOver
{
    /// <summary>Ending of a file that was set aside; a number follows.</summary>
    public const string Aside = ".damaged-";

    /// <summary>Does it; gives what is missing, in words.</summary>
    public static string Run(IRecordDisk disk, MonthName name, FileHealth health)
    {
        var found = Gather(disk, name);
        var hours = Hours(found);
        var minutes = Minutes(found, hours);
        var first = health.About?.FirstNumber ?? FirstOf(hours, minutes) ?? health.LastNumber + 1;
        var gaps = Gaps(hours, minutes, first,
            (health.About?.Gaps ?? []).Concat(WithoutEntries(found, hours, minutes)));
        Discard(disk, name);
        using (var file = MonthFile.Open(disk, name.CarriedOver, name.CarriedOverLog))
        {
            file.WriteAbout(new About(About.CurrentFormat, first, health.About?.FirstEntry ?? FirstEntry(found), gaps));
            foreach (var hour in hours)
            {
                file.Together(() => file.Pack(hour, []));
            }

            foreach (var minute in minutes)
            {
                file.Append(minute);
            }

            file.Checkpoint(isDue: true);
        }

        var aside = TakePlace(disk, name);
        var kept = hours.Sum(hour => Length(hour.Scans)) + minutes.Count;
        var lost = gaps.Sum(gap => gap.To - gap.From + 1);
        return $"{name.Data} was damaged and is set aside as {aside}: {kept} blocks carried over,"
            + $" {(lost == 0 ? "none known to be" : lost)} missing"
            + $" ({health.Problems.FirstOrDefault() ?? "its end is gone"})";
    }

    /// <summary>Finishes or takes back what a power cut interrupted.</summary>
    public static void Finish(IRecordDisk disk)
    {
        const string ending = ".new";
        const string restored = ".restored";
        var names = disk.Names();
        foreach (var leftover in names.Where(n => n.EndsWith(restored, StringComparison.Ordinal)))
        {
            if (MonthName.TryParse(leftover[..^restored.Length], out var name))
            {
                DiscardRestored(disk, name);
            }
        }

        foreach (var carried in names.Where(n => n.EndsWith(ending, StringComparison.Ordinal)))
        {
            if (!MonthName.TryParse(carried[..^ending.Length], out var name))
            {
                continue;
            }

            if (names.Contains(name.Data))
            {
                Discard(disk, name);
            }
            else
            {
                TakePlace(disk, name);
            }
        }
    }

    /// <summary>A month that was not wholly restored is no part of the record.</summary>
    public static void DiscardRestored(IRecordDisk disk, MonthName name)
    {
        foreach (var leftover in disk.Names().Where(n => n == name.Restored || n == name.RestoredLog))
        {
            disk.Delete(leftover);
        }
    }

    private static string TakePlace(IRecordDisk disk, MonthName name)
    {
        var names = disk.Names();
        var count = 1;
        while (names.Contains(name.Data + Aside + count))
        {
            count++;
        }

        var aside = name.Data + Aside + count;
        if (names.Contains(name.Data))
        {
            disk.Rename(name.Data, aside);
        }

        if (names.Contains(name.Log))
        {
            disk.Rename(name.Log, name.Log + Aside + count);
        }

        if (names.Contains(name.CarriedOverLog))
        {
            disk.Delete(name.CarriedOverLog);
        }

        disk.Rename(name.CarriedOver, name.Data);
        return aside;
    }

    /// <summary>An unfinished copy is no record: what it was made from is still there.</summary>
    private static void Discard(IRecordDisk disk, MonthName name)
    {
        foreach (var leftover in disk.Names().Where(n => n == name.CarriedOver || n == name.CarriedOverLog))
        {
            disk.Delete(leftover);
        }
    }

    private static Dictionary<(BlockKind Kind, long First, long Last), byte[]> Gather(IRecordDisk disk, MonthName name)
    {
        var found = new Dictionary<(BlockKind, long, long), byte[]>();
        using var data = disk.Open(name.Data);
        using var log = disk.LengthOf(name.Log) > 0 ? disk.Open(name.Log) : null;
        foreach (var block in PageWalk.Find(data, log))
        {
            Block.TryOpen(block, out var header, out _);
            found[(header.Kind, header.FirstNumber, header.LastNumber)] = block;
        }

        return found;
    }

    /// <summary>
    /// Packed hours whose scans are sound. Lost roll-ups are worked out again; lost entries are told by the gap in
    /// their numbers.
    /// </summary>
    private static List<StoredHour> Hours(Dictionary<(BlockKind Kind, long First, long Last), byte[]> found)
    {
        var hours = new List<StoredHour>();
        foreach (var ((kind, first, last), scans) in found.OrderBy(f => f.Key.First))
        {
            if (kind != BlockKind.Scans || (first == last && !found.ContainsKey((BlockKind.Rollups, first, last)))
                || (hours.Count > 0 && first <= LastOf(hours[^1].Scans)))
            {
                continue;
            }

            Block.TryOpen(scans, out var header, out var payload);
            var entries = found.GetValueOrDefault((BlockKind.Entries, first, last)) ?? NoEntries(header);
            if (!found.TryGetValue((BlockKind.Rollups, first, last), out var rollups))
            {
                var spans = Rollups.Of(ScanCodec.Decode(header, payload.Span), []);
                rollups = Block.Seal(header with { Kind = BlockKind.Rollups, Count = spans.Count },
                    RollupCodec.Encode(spans));
            }

            hours.Add(new StoredHour(first, scans, entries, rollups));
        }

        return hours;
    }

    private static List<StoredMinute> Minutes(
        Dictionary<(BlockKind Kind, long First, long Last), byte[]> found, IReadOnlyList<StoredHour> hours)
    {
        var minutes = new List<StoredMinute>();
        foreach (var ((kind, first, last), scans) in found.OrderBy(f => f.Key.First))
        {
            if (kind == BlockKind.Scans && first == last
                && !hours.Any(hour => hour.Number <= first && LastOf(hour.Scans) >= first))
            {
                Block.TryOpen(scans, out var header, out _);
                minutes.Add(new StoredMinute(
                    first, scans, found.GetValueOrDefault((BlockKind.Entries, first, last)) ?? NoEntries(header)));
            }
        }

        return minutes;
    }

    private static byte[] NoEntries(in BlockHeader scans) => Block.Seal(
        scans with { Kind = BlockKind.Entries, Count = 0, FirstEntry = 0 },
        EntryCodec.Encode([], new Dictionary<string, long>()));

    private static List<(long From, long To)> Gaps(
        IEnumerable<StoredHour> hours, IEnumerable<StoredMinute> minutes, long first,
        IEnumerable<(long From, long To)> known)
    {
        var gaps = known.ToList();
        var next = first;
        var ranges = hours.Select(hour => (hour.Number, Last: LastOf(hour.Scans)))
            .Concat(minutes.Select(minute => (minute.Number, minute.Number)));
        foreach (var (from, to) in ranges.OrderBy(range => range.Item1))
        {
            if (from > next && !gaps.Any(gap => gap.From <= next && gap.To >= from - 1))
            {
                gaps.Add((next, from - 1));
            }

            next = to + 1;
        }

        return gaps;
    }

    /// <summary>Minutes whose scans are sound and whose entries are not: noted as gaps as well.</summary>
    private static IEnumerable<(long From, long To)> WithoutEntries(
        Dictionary<(BlockKind Kind, long First, long Last), byte[]> found, IEnumerable<StoredHour> hours,
        IEnumerable<StoredMinute> minutes) =>
        hours.Select(hour => (From: hour.Number, To: LastOf(hour.Scans)))
            .Concat(minutes.Select(minute => (From: minute.Number, To: minute.Number)))
            .Where(range => !found.ContainsKey((BlockKind.Entries, range.From, range.To)));

    private static long? FirstOf(IReadOnlyList<StoredHour> hours, IReadOnlyList<StoredMinute> minutes) =>
        hours.Select(hour => (long?)hour.Number).Concat(minutes.Select(minute => (long?)minute.Number)).Min();

    private static long FirstEntry(Dictionary<(BlockKind Kind, long First, long Last), byte[]> found) => found
        .Where(f => f.Key.Kind == BlockKind.Entries)
        .Select(f => Block.TryOpen(f.Value, out var header, out _) ? header.FirstEntry : long.MaxValue)
        .Append(long.MaxValue).Min() is var first && first < long.MaxValue ? first : 1;

    private static long LastOf(byte[] scans) => Block.TryOpen(scans, out var header, out _) ? header.LastNumber : 0;

    private static long Length(byte[] scans) => Block.TryOpen(scans, out var header, out _)
        ? header.LastNumber - header.FirstNumber + 1 : 0;
}
