using OnboardHeat.Core.Scans;
using OnboardHeat.Engine.Recordings;

namespace OnboardHeat.Engine.Imports;

/// <summary>
/// Turns files of a simple logger into one recorded drive: each file's form is found, their rows are merged by time.
/// Everything is read once before anything is written, so a dry run says exactly what an import would do.
/// </summary>
public sealed class RecordingImport
{
    private readonly IReadOnlyList<(string Name, Func<Stream> Open)> _files;
    private readonly ImportWish _wish;
    private readonly IReadOnlyList<ForeignForm> _forms;

    /// <summary>Finds out how the files are to be read.</summary>
    /// <param name="files">Names as the person gave them, and how to open each at its beginning, several times.</param>
    /// <param name="wish">What the person said.</param>
    /// <exception cref="RecordingException">A file cannot be understood, or in two ways.</exception>
    public RecordingImport(IReadOnlyList<(string Name, Func<Stream> Open)> files, ImportWish wish)
    {
        ArgumentNullException.ThrowIfNull(files);
        _files = files;
        _wish = wish;
        _forms = [.. files.Select(file => new FormFinder(file.Name, file.Open, wish).Find())];
        var isElapsed = _forms.Select(form => form.TimeKind == ForeignTimeKind.Elapsed).Distinct().ToArray();
        if (isElapsed.Length > 1)
        {
            throw new RecordingException(files[0].Name,
                "some files have dates and some only seconds; they cannot be merged");
        }
    }

    /// <summary>Reads everything and gives what was understood, in lines.</summary>
    /// <exception cref="RecordingException">A row cannot be taken.</exception>
    public IReadOnlyList<string> Understand()
    {
        var seen = Seen();
        var scans = Merge(seen).LongCount();
        return [.. seen.SelectMany(file => file.Lines(_wish)), $"{scans} scans in all"];
    }

    /// <summary>Writes the recorded drive; gives how many scans it has.</summary>
    /// <exception cref="RecordingException">A row cannot be taken.</exception>
    public long Write(TextWriter to)
    {
        var writer = new DriveWriter(to, Fitted());
        var count = 0L;
        var isDated = _forms[0].TimeKind != ForeignTimeKind.Elapsed;
        foreach (var scan in Merge(Seen()))
        {
            writer.Write(scan, isDated ? scan.Utc : null);
            count++;
        }

        return count;
    }

    private ImportedFile[] Seen() => [.. _forms.Select(form => new ImportedFile(form))];

    private FittedSet Fitted()
    {
        var targets = _forms.SelectMany(form => form.Targets).OfType<string>().ToHashSet();
        return new FittedSet(
            Channels.All.ToArray().Where(channel => targets.Contains(Channels.NameOf(channel))),
            Signals.All.ToArray().Where(signal => targets.Contains(Signals.NameOf(signal))));
    }

    private IEnumerable<Scan> Merge(ImportedFile[] seen)
    {
        var rows = new PriorityQueue<(int File, IEnumerator<ForeignRow> Rows), (DateTimeOffset, int)>();
        try
        {
            for (var i = 0; i < _files.Count; i++)
            {
                Next(rows, i, new ForeignReader(_forms[i], _wish, seen[i]).Read(_files[i].Open()).GetEnumerator());
            }

            DateTimeOffset? began = null;
            while (rows.Count > 0)
            {
                var at = rows.Peek().Rows.Current.Moment;
                began ??= _forms[0].TimeKind == ForeignTimeKind.Elapsed ? DateTimeOffset.UnixEpoch : at;
                var scan = new Scan { Elapsed = at - began.Value, Utc = at };
                while (rows.Count > 0 && rows.Peek().Rows.Current.Moment == at)
                {
                    var (file, enumerator) = rows.Dequeue();
                    Add(scan, file, enumerator.Current);
                    Next(rows, file, enumerator);
                }

                yield return scan;
            }
        }
        finally
        {
            while (rows.TryDequeue(out var left, out _))
            {
                left.Rows.Dispose();
            }
        }
    }

    private static void Next(
        PriorityQueue<(int File, IEnumerator<ForeignRow> Rows), (DateTimeOffset, int)> rows, int file,
        IEnumerator<ForeignRow> more)
    {
        if (more.MoveNext())
        {
            rows.Enqueue((file, more), (more.Current.Moment, file));
        }
        else
        {
            more.Dispose();
        }
    }

    private void Add(Scan scan, int file, ForeignRow row)
    {
        foreach (var (target, value) in row.Readings)
        {
            var isTwice = false;
            if (Channels.TryParse(target, out var channel))
            {
                isTwice = scan[channel].HasValue;
                scan[channel] = Reading.Of(value);
            }
            else if (Signals.TryParse(target, out var signal))
            {
                isTwice = scan[signal] is not null;
                scan[signal] = value != 0;
            }

            if (isTwice)
            {
                throw new RecordingException(_files[file].Name, row.Line, target,
                    "another file has this channel at the same time");
            }
        }
    }
}
