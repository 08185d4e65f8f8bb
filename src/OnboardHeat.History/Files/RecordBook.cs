using OnboardHeat.Engine.Ports;
using OnboardHeat.History.Blocks;
using OnboardHeat.History.Disk;

namespace OnboardHeat.History.Files;

/// <summary>
/// The record as the owner thread writes it: which file is open, what number comes next, when a month is full, when
/// minutes are packed. Anything that fails on the way throws; the book is then closed and opened anew, which checks the
/// newest file again.
/// </summary>
internal sealed class RecordBook : IDisposable
{
    /// <summary>A trusted clock must say the new month for so long: a step that is taken back makes no file.</summary>
    private static readonly TimeSpan s_monthHolds = TimeSpan.FromMinutes(10);

    /// <summary>How far numbers jump where it cannot be told how many were given out before damage.</summary>
    private const long Jump = 1_000_000;

    private readonly IRecordDisk _disk;
    private readonly RecordLimits _limits;
    private readonly IDisposable _lock;
    private readonly TailMark _mark;
    private readonly List<BlockHeader> _openMinutes = [];
    private readonly Dictionary<string, long> _cursors = [];
    private MonthFile? _file;
    private long _nextNumber = 1;
    private long _nextEntry = 1;
    private (string Label, int Run, TimeSpan Since)? _monthSeen;

    /// <summary>Takes the record and opens its newest file after reading it whole.</summary>
    public RecordBook(IRecordDisk disk, RecordLimits limits)
    {
        _disk = disk;
        _limits = limits;
        _lock = disk.Lock();
        _mark = new TailMark(disk);
        try
        {
            CarryOver.Finish(disk);
            Shelf = new RecordShelf(disk);
            OpenNewest();
        }
        catch
        {
            Dispose();
            throw;
        }
    }

    private RecordBook(IRecordDisk disk, RecordLimits limits, RecordShelf shelf)
    {
        _disk = disk;
        _limits = limits;
        _lock = disk.Lock();
        _mark = new TailMark(disk);
        Shelf = shelf;
        IsToRead = true;
    }

    /// <summary>The folder.</summary>
    public IRecordDisk Disk => _disk;

    /// <summary>Whether nothing is recorded here: months may be put in, none is being written.</summary>
    public bool IsToRead { get; }

    /// <summary>The files and what is in them.</summary>
    public RecordShelf Shelf { get; } = null!;

    /// <summary>Damage found at opening, in words; each is told once.</summary>
    public List<string> Damage { get; } = [];

    /// <summary>Number of the newest entry; 0 when there is none.</summary>
    public long NewestEntry => _nextEntry - 1;

    /// <summary>Where the receivers stand.</summary>
    public IReadOnlyDictionary<string, long> Cursors => _cursors;

    /// <summary>Takes the record to read only: nothing of it changes on the card.</summary>
    public static RecordBook ToRead(IRecordDisk disk) => new(disk, RecordLimits.Default, new RecordShelf(disk));

    /// <summary>Adds a minute; when it returns, the minute is on the card.</summary>
    public long Append(MinuteDraft draft)
    {
        ThrowIfFull();
        if (IsOnRecord(draft.Header))
        {
            // The card failed after the minute had reached it and before it could say so.
            return _nextNumber - 1;
        }

        var isNew = TurnToMonth(draft.Header);
        var header = draft.Header with { FirstNumber = _nextNumber, LastNumber = _nextNumber };
        var entries = header with { Kind = BlockKind.Entries, Count = draft.Entries.Count, FirstEntry = _nextEntry };
        var minute = new StoredMinute(
            _nextNumber, Block.Seal(header, draft.Scans),
            Block.Seal(entries, EntryCodec.Encode(draft.Entries, _cursors)));
        if (isNew)
        {
            _file!.Together(() =>
            {
                _file.WriteAbout(new About(About.CurrentFormat, _nextNumber, _nextEntry, []));
                _file.Append(minute);
            });
        }
        else
        {
            _file!.Append(minute);
        }

        _nextNumber++;
        _nextEntry += draft.Entries.Count;
        _openMinutes.Add(header);
        Shelf.Added(header);
        Mark();
        return _nextNumber - 1;
    }

    /// <summary>Leaves the rest of the card alone.</summary>
    public void ThrowIfFull()
    {
        var free = _disk.FreeBytes;
        if (free < _limits.FreeBytes)
        {
            throw new IOException(
                $"the card has {free >> 20} MB free, less than the {_limits.FreeBytes >> 20} MB that recording leaves"
                    + $" alone");
        }
    }

    /// <summary>The receiver has had everything up to this entry; stored with the next minute.</summary>
    public void Advance(string receiver, long entry) =>
        _cursors[receiver] = Math.Max(_cursors.GetValueOrDefault(receiver), Math.Min(entry, NewestEntry));

    /// <summary>Packs hours that are over and keeps the log short. What it does can be done later as well.</summary>
    public void Tidy()
    {
        if (_file is null)
        {
            return;
        }

        var hasPacked = false;
        for (var over = Packing.FirstHour(_openMinutes); over > 0
            && over < _openMinutes.Count; over = Packing.FirstHour(_openMinutes))
        {
            PackOldest(over);
            hasPacked = true;
        }

        _file.Checkpoint(hasPacked);
        if (hasPacked)
        {
            _mark.Sync();
        }

        Shelf.LetGo();
    }

    /// <summary>The files, and which of them were set aside.</summary>
    public IReadOnlyList<RecordedMonth> Months()
    {
        var months = Shelf.Names.Select(name => new RecordedMonth(
            name.Data, name.Label, _disk.LengthOf(name.Data) + _disk.LengthOf(name.Log), name == Shelf.Newest, ""));
        var aside = _disk.Names()
            .Where(name => name.Contains(CarryOver.Aside, StringComparison.Ordinal)).Order(StringComparer.Ordinal)
            .Select(name => new RecordedMonth(name, "", _disk.LengthOf(name), false, "damaged, set aside"));
        return [.. months, .. aside];
    }

    /// <summary>Looks through an older file; what is damaged is set aside and told.</summary>
    public void CheckOlder(MonthName name)
    {
        var health = Shelf.Check(name);
        if (!health.IsSound && !health.IsNewer)
        {
            Damage.Add(CarryOver.Run(_disk, name, health));
            Shelf.Check(name);
        }
    }

    public void Dispose()
    {
        Shelf?.Dispose();
        _file?.Dispose();
        _mark.Dispose();
        _lock.Dispose();
    }

    /// <summary>Ends well: the log is brought in, so that the next start finds a plain file.</summary>
    public void Close()
    {
        _file?.Checkpoint(isDue: true);
        if (_file is not null)
        {
            _mark.Sync();
        }
    }

    private bool IsOnRecord(in BlockHeader header) => _openMinutes.Count > 0 && _openMinutes[^1] is var last
        && last.Run == header.Run && last.First == header.First && last.Last == header.Last
            && last.Count == header.Count;

    /// <summary>
    /// The minute is on the card whether or not the mark is; where the mark fails, the next minute will fail too.
    /// </summary>
    private void Mark()
    {
        try
        {
            _mark.Write(_nextNumber - 1, _nextEntry - 1);
        }
        catch (IOException)
        {
            // See above.
        }
    }

    private void OpenNewest()
    {
        var mark = _mark.Read();
        if (Shelf.Newest is not { } newest)
        {
            StartAfter(mark, mark is null ? null : "the files of the record are gone");
            return;
        }

        var health = Shelf.Check(newest);
        if (health.IsNewer)
        {
            StartAfter(mark, $"{newest.Data} was written by a newer version and is left as it is");
            _nextNumber = mark is null ? _nextNumber + Jump : _nextNumber;
            return;
        }

        if (!health.IsSound)
        {
            Damage.Add(CarryOver.Run(_disk, newest, health));
            health = Shelf.Check(newest);
        }

        var before = health.About is null ? Before(newest) : null;
        var last = Math.Max(health.LastNumber, before?.LastNumber ?? 0);
        _nextNumber = Math.Max(last, mark?.Number ?? 0) + 1;
        _nextEntry = Math.Max(Math.Max(health.NextEntry, before?.NextEntry ?? 1), (mark?.Entry ?? 0) + 1);
        foreach (var (receiver, number) in before?.Cursors ?? health.Cursors)
        {
            _cursors[receiver] = number;
        }

        _file = MonthFile.Open(_disk, newest.Data, newest.Log);
        Shelf.Opened(_file);
        NoteMissingEnd(newest, health, last);
        foreach (var minute in _file.ReadMinutes(0, int.MaxValue))
        {
            Block.TryOpen(minute.Scans, out var header, out _);
            _openMinutes.Add(header);
        }
    }

    /// <summary>
    /// What the mark knows of and the file does not hold is gone without a trace: it is told, and noted as a gap.
    /// </summary>
    private void NoteMissingEnd(MonthName name, FileHealth health, long last)
    {
        var missing = _nextNumber - 1 - last;
        if (missing > 0)
        {
            Damage.Add($"{name.Data} has lost its end: the newest {missing} {(missing == 1 ? "block" : "blocks")}");
        }

        if (missing > 0 || health.About is null)
        {
            var about = health.About ?? new About(About.CurrentFormat, last + 1, health.NextEntry, []);
            _file!.WriteAbout(
                about with { Gaps = missing > 0 ? [.. about.Gaps, (last + 1, _nextNumber - 1)] : about.Gaps });
        }
    }

    private FileHealth? Before(MonthName newest)
    {
        var older = Shelf.Names.Where(name => name.CompareTo(newest) < 0).ToArray();
        return older.Length == 0 ? null : Shelf.Check(older[^1]);
    }

    private void StartAfter((long Number, long Entry)? mark, string? damage)
    {
        _nextNumber = (mark?.Number ?? 0) + 1;
        _nextEntry = (mark?.Entry ?? 0) + 1;
        if (damage is not null)
        {
            Damage.Add(damage);
        }
    }

    /// <summary>Opens the file that a minute belongs to. True when it is new.</summary>
    private bool TurnToMonth(in BlockHeader header)
    {
        var label = header.Anchor.Quality == AnchorQuality.Trusted
            ? MonthName.LabelOf(header.Anchor.DateAt(header.Last)) : null;
        if (_file is not null && (label is null || label == Shelf.Newest?.Label))
        {
            _monthSeen = null;
            return false;
        }

        if (_file is not null && (_monthSeen is not { } seen || seen.Label != label || seen.Run != header.Run))
        {
            _monthSeen = (label!, header.Run, header.First);
            return false;
        }

        if (_file is not null && header.Last - _monthSeen!.Value.Since < s_monthHolds)
        {
            return false;
        }

        CloseMonth();
        var name = new MonthName((Shelf.Newest?.Sequence ?? 0) + 1, label ?? MonthName.Undated);
        _file = MonthFile.Open(_disk, name.Data, name.Log);
        Shelf.Made(name, _file);
        Retire();
        _monthSeen = null;
        return true;
    }

    private void CloseMonth()
    {
        if (_file is null)
        {
            return;
        }

        while (_openMinutes.Count > 0)
        {
            PackOldest(Packing.FirstHour(_openMinutes));
        }

        _file.Checkpoint(isDue: true);
        _file.Dispose();
        _file = null;
        Shelf.Closed();
    }

    private void PackOldest(int count)
    {
        var minutes = _file!.ReadMinutes(_openMinutes[0].FirstNumber, count);
        var packed = Packing.Pack(minutes);
        _file.Together(() => _file.Pack(packed, [.. minutes.Select(minute => minute.Number)]));
        _openMinutes.RemoveRange(0, count);
    }

    /// <summary>
    /// Lets the oldest files go. A file goes when so many later months are there and its own lies as far back: a clock
    /// that once said 2038 makes nothing old by itself.
    /// </summary>
    private void Retire()
    {
        var names = Shelf.Names;
        var newest = names[^1].Month;
        foreach (var name in names.SkipLast(1))
        {
            var later = names.Where(n => n.CompareTo(name) > 0 && n.Month is not null).ToArray();
            var month = name.Month ?? (later.Length > 0 ? later[0].Month : null);
            if (later.Select(n => n.Label).Distinct().Count() < _limits.KeepMonths
                || newest - month < _limits.KeepMonths)
            {
                return;
            }

            Shelf.Forget(name);
            _disk.Delete(name.Data);
            if (_disk.LengthOf(name.Log) > 0 || _disk.Names().Contains(name.Log))
            {
                _disk.Delete(name.Log);
            }
        }
    }
}
