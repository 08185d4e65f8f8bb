using OnboardHeat.Core.Scans;

namespace OnboardHeat.Engine;

/// <summary>
/// Where the outputs say how they fare, and the loop reads it for the next scan (<c>scan.House = status.Current</c>).
/// Safe from any thread; the report is the same instance until something changes.
/// </summary>
public sealed class HouseStatus
{
    private HouseReport _current = HouseReport.Well;

    /// <summary>The report for the next scan.</summary>
    public HouseReport Current => Volatile.Read(ref _current);

    /// <summary>Recording has stopped, and why; empty words when it runs again.</summary>
    public void SetHistoryStopped(string why) => Change(report => report with { HistoryStopped = OneLine(why) });

    /// <summary>
    /// Damage was found in the record: what, and how much is missing. Words are added to those already there.
    /// </summary>
    public void AddHistoryDamage(string what) => Change(report => report with
    {
        HistoryDamaged = report.HistoryDamaged.Length == 0 ? OneLine(what)
            : $"{report.HistoryDamaged}; {OneLine(what)}",
    });

    /// <summary>The daily trial of the warning chain did not come out, and why; empty words when it did.</summary>
    public void SetSelfTestFailed(string why) => Change(report => report with { SelfTestFailed = why });

    /// <summary>Whether the supply dips.</summary>
    public void SetPowerLow(bool isLow) => Change(report => report with { IsPowerLow = isLow });

    /// <summary>Words that an export can write and a replay can read without a change.</summary>
    private static string OneLine(string words) => words.ReplaceLineEndings(" ").Replace('|', '/');

    private void Change(Func<HouseReport, HouseReport> change)
    {
        while (true)
        {
            var before = Current;
            var after = change(before);
            if (after == before || Interlocked.CompareExchange(ref _current, after, before) == before)
            {
                return;
            }
        }
    }
}
