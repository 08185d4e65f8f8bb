using System.Globalization;
using OnboardHeat.History.Blocks;
using OnboardHeat.History.Files;

namespace OnboardHeat.History.Backup;

/// <summary>What is in a month of a backup, counted as its parts go by, and the sentence about it.</summary>
internal sealed class BackupSurvey(MonthName month, About about)
{
    private readonly List<(long From, long To)> _gaps = [.. about.Gaps];
    private long _hours;
    private long _minutes;
    private long _scans;
    private int _firstRun;
    private int _lastRun;
    private long _next = about.FirstNumber;

    public MonthName Month => month;

    public About About => about;

    /// <summary>What is missing: what was known before, and what was found to be while reading.</summary>
    public IReadOnlyList<(long From, long To)> Gaps => _gaps;

    public void Add(StoredHour hour)
    {
        Add(hour.Scans);
        _hours++;
    }

    public void Add(StoredMinute minute)
    {
        Add(minute.Scans);
        _minutes++;
    }

    public override string ToString()
    {
        var missing = _gaps.Sum(gap => gap.To - gap.From + 1);
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{month.Label} ({month.Data}): {_scans} scans of runs {_firstRun} to {_lastRun} in {_hours} hours and"
                + $" {_minutes} shorter blocks"
            + $"{(missing == 0 ? "" : $", {missing} blocks known to be missing")}");
    }

    private void Add(byte[] scans)
    {
        if (!Block.TryOpen(scans, out var header, out _))
        {
            return;
        }

        if (header.FirstNumber > _next && !_gaps.Any(gap => gap.From <= _next && gap.To >= header.FirstNumber - 1))
        {
            _gaps.Add((_next, header.FirstNumber - 1));
        }

        _next = header.LastNumber + 1;
        _scans += header.Count;
        _firstRun = _firstRun == 0 ? header.Run : _firstRun;
        _lastRun = header.Run;
    }
}
