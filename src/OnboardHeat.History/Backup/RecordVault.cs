using OnboardHeat.Engine.Ports;
using OnboardHeat.History.Blocks;
using OnboardHeat.History.Files;
using OnboardHeat.History.ReadBack;

namespace OnboardHeat.History.Backup;

/// <summary>
/// Backs the record up and restores months, some blocks at a time on the owner's thread, so that recording goes on
/// between.
/// </summary>
internal sealed class RecordVault(RecordDesk desk) : IRecordVault
{
    /// <summary>Packed hours copied in one go: a tenth of a second at most on a slow card.</summary>
    private const int HoursAtOnce = 8;

    /// <summary>Blocks written in one transaction while restoring.</summary>
    private const int BlocksAtOnce = 32;

    public async Task<IReadOnlyList<string>> BackUpAsync(Stream to, CancellationToken cancellationToken)
    {
        var writer = new BackupWriter(to);
        await writer.BeginAsync(cancellationToken);
        var lines = new List<string>();
        foreach (var name in await AskAsync(book => book.Shelf.Names))
        {
            if (await AskAsync(book => AboutOf(book, name)) is not { } about)
            {
                lines.Add($"{name.Data} is left out: it was let go meanwhile, or a newer version wrote it");
                continue;
            }

            var survey = new BackupSurvey(name, about);
            await writer.MonthAsync(name, about, cancellationToken);
            await CopyAsync(name, survey, writer, cancellationToken);
            await writer.MonthEndAsync(survey.Gaps, cancellationToken);
            lines.Add(survey.ToString());
        }

        await writer.EndAsync(cancellationToken);
        return lines;
    }

    public async Task<IReadOnlyList<string>> RestoreAsync(Stream from, CancellationToken cancellationToken)
    {
        var lines = new List<string>();
        var waiting = new List<BackupPart>();
        MonthRestore? month = null;
        try
        {
            await foreach (var part in new BackupReader(from).ReadAsync(cancellationToken))
            {
                waiting.Add(part);
                if (waiting.Count < BlocksAtOnce && part.Kind is BackupPartKind.Hour or BackupPartKind.Minute)
                {
                    continue;
                }

                BackupPart[] batch = [.. waiting];
                waiting.Clear();
                month = await AskAsync(book => Take(book, month, batch, lines));
            }
        }
        finally
        {
            if (month is { } unfinished)
            {
                await AskAsync(_ =>
                {
                    unfinished.Dispose();
                    return true;
                });
            }
        }

        return lines;
    }

    private static MonthRestore? Take(RecordBook book, MonthRestore? month, BackupPart[] batch, List<string> lines)
    {
        try
        {
            month?.Together(batch);
            foreach (var part in batch)
            {
                if (part.Kind == BackupPartKind.Month)
                {
                    month = new MonthRestore(book, part.Month, part.About!);
                }
                else if (part.Kind == BackupPartKind.MonthEnd)
                {
                    lines.Add(month!.Finish(part.Gaps!));
                    month = null;
                }
            }

            return month;
        }
        catch (Exception e) when (e is not IOException && FileCheck.IsEngineTrouble(e))
        {
            throw new IOException($"a month cannot be written: {e.Message}", e);
        }
    }

    private static About? AboutOf(RecordBook book, MonthName name)
    {
        try
        {
            return book.Shelf.Names.Contains(name)
                && book.Shelf.Take(name).ReadAbout() is { Format: <= About.CurrentFormat } about
                ? about
                : null;
        }
        catch (Exception e) when (e is not IOException && FileCheck.IsEngineTrouble(e))
        {
            throw new IOException(
                $"{name.Data} is damaged ({e.Message}); a daemon that starts sets damage aside: back up after that", e);
        }
    }

    private async Task CopyAsync(MonthName name, BackupSurvey survey, BackupWriter writer,
        CancellationToken cancellationToken)
    {
        for (var next = 0L; ;)
        {
            var at = next;
            var (hours, minutes) = await AskAsync(book => Read(book, name, at));
            foreach (var hour in hours)
            {
                survey.Add(hour);
                await writer.HourAsync(hour, cancellationToken);
                Block.TryOpen(hour.Scans, out var header, out _);
                next = header.LastNumber + 1;
            }

            foreach (var minute in minutes)
            {
                survey.Add(minute);
                await writer.MinuteAsync(minute, cancellationToken);
            }

            if (hours.Count == 0)
            {
                return;
            }
        }
    }

    /// <summary>
    /// Some packed hours from a number on; after the last of them all minutes, in the same go: none can be packed in
    /// between.
    /// </summary>
    private static (IReadOnlyList<StoredHour> Hours, IReadOnlyList<StoredMinute> Minutes) Read(RecordBook book,
        MonthName name, long from)
    {
        if (!book.Shelf.Names.Contains(name))
        {
            return ([], []);
        }

        var file = book.Shelf.Take(name);
        var digests = file.ReadDigests(from, HoursAtOnce).ToDictionary(digest => digest.Number);
        var found = file.ReadHours(from, HoursAtOnce);
        var hours = found.Where(hour => digests.ContainsKey(hour.Number)).Select(hour =>
            new StoredHour(hour.Number, hour.Scans, digests[hour.Number].Entries, digests[hour.Number].Rollups))
            .Where(IsSound).ToArray();
        return found.Count > 0 && hours.Length == 0
            ? Read(book, name, found[^1].Number + 1)
            : (hours, hours.Length > 0 ? [] : [.. file.ReadMinutes(from, int.MaxValue).Where(IsSound)]);
    }

    private static bool IsSound(StoredHour hour) => Block.TryOpen(hour.Scans, out _, out _)
        && Block.TryOpen(hour.Entries, out _, out _) && Block.TryOpen(hour.Rollups, out _, out _);

    private static bool IsSound(StoredMinute minute) =>
        Block.TryOpen(minute.Scans, out _, out _) && Block.TryOpen(minute.Entries, out _, out _);

    private async Task<T> AskAsync<T>(Func<RecordBook, T> question)
    {
        var answer = await desk.Ask(book => (IsOpen: true, Value: question(book)), (IsOpen: false, Value: default!));
        return answer.IsOpen ? answer.Value
            : throw new IOException("the record is not open: the card fails, or the daemon has only just begun");
    }
}
