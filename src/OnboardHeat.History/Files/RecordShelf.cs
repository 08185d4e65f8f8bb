using OnboardHeat.History.Blocks;
using OnboardHeat.History.Disk;

namespace OnboardHeat.History.Files;

/// <summary>
/// The files of the record and what is in them. Of each file the runs and their ties to the wall clock are remembered
/// (a few hundred bytes a month); blocks are read when asked for. Owner thread only.
/// </summary>
internal sealed class RecordShelf(IRecordDisk disk) : IDisposable
{
    /// <summary>A file whose pages are worth collecting at once.</summary>
    private const long LargeBytes = 1 << 20;

    private readonly SortedDictionary<MonthName, List<RunSpan>?> _files = Listed(disk);
    private MonthFile? _open;
    private (MonthName Name, MonthFile File)? _looked;
    private bool _hasLooked;

    /// <summary>Whether files were looked at since memory was last given back.</summary>
    public bool HasLooked => _hasLooked;

    /// <summary>All files, oldest first.</summary>
    public IReadOnlyList<MonthName> Names => [.. _files.Keys];

    public MonthName? Newest => _files.Count == 0 ? null : _files.Keys.Last();

    /// <summary>
    /// Highest run on record; 0 when there is none. Runs rise from file to file, so the newest that holds any knows it.
    /// </summary>
    public int HighestRun => Names.Reverse().Select(Spans).FirstOrDefault(spans => spans.Count > 0)?[^1].Run ?? 0;

    /// <summary>Reads a file whole.</summary>
    public FileHealth Check(MonthName name)
    {
        DropLooked();
        _hasLooked = true;
        var health = FileCheck.Of(() => MonthFile.Look(disk, name));

        if (disk.LengthOf(name.Data) > LargeBytes)
        {
            // Megabytes of pages were read for a few hundred bytes; whoever goes through a year would pile them up.
            CollectEngines(GCCollectionMode.Forced);
        }

        _files[name] = [.. health.Runs];
        return health;
    }

    /// <summary>The runs of a file; read from it when they are not remembered.</summary>
    public IReadOnlyList<RunSpan> Spans(MonthName name)
    {
        if (_files[name] is not { } spans)
        {
            _files[name] = spans = [.. Check(name).Runs];
        }

        return spans;
    }

    /// <summary>A file to read from; good until the next call.</summary>
    public MonthFile Take(MonthName name)
    {
        if (_open is not null && name == Newest)
        {
            return _open;
        }

        if (_looked is { } looked && looked.Name == name)
        {
            return looked.File;
        }

        DropLooked();
        var file = MonthFile.Look(disk, name);
        _hasLooked = true;
        _looked = (name, file);
        return file;
    }

    /// <summary>The newest file is open for writing.</summary>
    public void Opened(MonthFile file) => _open = file;

    /// <summary>A new file was made and is open.</summary>
    public void Made(MonthName name, MonthFile file)
    {
        _files[name] = [];
        _open = file;
    }

    public void Closed() => _open = null;

    /// <summary>A month came back from a backup.</summary>
    public void Restored(MonthName name, FileHealth health) => _files[name] = [.. health.Runs];

    /// <summary>A minute was added to the newest file.</summary>
    public void Added(in BlockHeader header) => RunSpan.Add(_files[Newest!.Value] ??= [], header);

    /// <summary>
    /// How to date a run, from all that is known of it in the file given and in those beside it that it reaches into.
    /// Runs rise from file to file, so no other need be read.
    /// </summary>
    public RunDates Dates(int run, MonthName at)
    {
        var names = Names.ToList();
        int first = names.IndexOf(at), last = first;
        while (first > 0 && Spans(names[first]) is [var begin, ..] && begin.Run == run)
        {
            first--;
        }

        while (last < names.Count - 1 && Spans(names[last]) is [.., var end] && end.Run == run)
        {
            last++;
        }

        var spans = names.Take(first..(last + 1)).SelectMany(Spans).Where(span => span.Run == run);
        return new RunDates(run, [.. spans.SelectMany(span => span.Anchors)]);
    }

    public void Forget(MonthName name)
    {
        DropLooked();
        _files.Remove(name);
    }

    /// <summary>
    /// Closes what was opened to look at, and gives its memory back: the engine keeps every page that it read, tens of
    /// megabytes after a year was drawn, and by itself nothing here would ever ask for them.
    /// </summary>
    public void LetGo()
    {
        DropLooked();
        if (_hasLooked)
        {
            _hasLooked = false;
            CollectEngines(GCCollectionMode.Aggressive);
        }
    }

    public void Dispose() => DropLooked();

    /// <summary>
    /// The engine's transactions have finalizers that hold all its pages; they go only at a second look.
    /// </summary>
    private static void CollectEngines(GCCollectionMode mode)
    {
        GC.Collect();
        GC.WaitForPendingFinalizers();
        GC.Collect(GC.MaxGeneration, mode, blocking: true, compacting: mode == GCCollectionMode.Aggressive);
    }

    private void DropLooked()
    {
        _looked?.File.Dispose();
        _looked = null;
    }

    private static SortedDictionary<MonthName, List<RunSpan>?> Listed(IRecordDisk disk)
    {
        var files = new SortedDictionary<MonthName, List<RunSpan>?>();
        foreach (var file in disk.Names())
        {
            if (MonthName.TryParse(file, out var name))
            {
                files[name] = null;
            }
        }

        return files;
    }
}
