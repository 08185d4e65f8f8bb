using OnboardHeat.History.Disk;
using OnboardHeat.History.Files;

namespace OnboardHeat.History.Backup;

/// <summary>
/// One month on its way back. It is written under another name, read whole and compared, and takes its name only then;
/// what a power cut leaves of it is no part of the record and goes at the next start. Owner thread only.
/// </summary>
internal sealed class MonthRestore : IDisposable
{
    private readonly RecordBook _book;
    private readonly BackupSurvey _survey;
    private readonly MonthFile? _file;

    /// <summary>Begins a month; one that is on record already is passed over.</summary>
    /// <exception cref="IOException">It cannot have a place in this record, or the card is full.</exception>
    public MonthRestore(RecordBook book, MonthName name, About about)
    {
        _book = book;
        _survey = new BackupSurvey(name, about);
        if (about.Format > About.CurrentFormat)
        {
            throw new IOException($"{name.Data} was written by a newer version");
        }

        if (RestorePlace.IsTaken(book.Shelf, name, about))
        {
            return;
        }

        book.ThrowIfFull();
        Discard();
        _file = MonthFile.Open(book.Disk, name.Restored, name.RestoredLog);
    }

    /// <summary>Adds what a batch holds for this month.</summary>
    public void Together(IReadOnlyList<BackupPart> batch)
    {
        _book.ThrowIfFull();
        _file?.Together(() =>
        {
            foreach (var part in batch)
            {
                Add(part);
            }
        });
        _file?.Checkpoint(isDue: false);
    }

    /// <summary>Verifies the month and puts it in its place; gives the sentence about it.</summary>
    public string Finish(IReadOnlyList<(long From, long To)> gaps)
    {
        var name = _survey.Month;
        if (_file is null)
        {
            return $"{name.Label} ({name.Data}) is on record already and stays as it is";
        }

        _file.WriteAbout(_survey.About with { Gaps = gaps });
        _file.Checkpoint(isDue: true);
        _file.Dispose();
        var health = FileCheck.Of(() => MonthFile.Look(_book.Disk, name.Restored, name.RestoredLog));
        if (!health.IsSound)
        {
            Discard();
            throw new IOException($"{name.Data} does not read back as it was written: {health.Problems[0]}");
        }

        if (RestorePlace.Problem(_book, name, health) is { } problem)
        {
            Discard();
            throw new IOException(problem);
        }

        _book.Disk.Delete(name.RestoredLog);
        _book.Disk.Rename(name.Restored, name.Data);
        _book.Shelf.Restored(name, health);
        return $"restored and verified: {_survey}";
    }

    /// <summary>Gives up what is not finished.</summary>
    public void Dispose()
    {
        _file?.Dispose();
        Discard();
    }

    private void Add(BackupPart part)
    {
        if (part.Hour is { } hour)
        {
            _file!.Pack(hour, []);
            _survey.Add(hour);
        }
        else if (part.Minute is { } minute)
        {
            _file!.Append(minute);
            _survey.Add(minute);
        }
    }

    private void Discard() => CarryOver.DiscardRestored(_book.Disk, _survey.Month);
}
