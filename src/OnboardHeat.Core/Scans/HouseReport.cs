namespace OnboardHeat.Core.Scans;

/// <summary>
/// How the daemon itself fares, as far as a person must hear of it. It comes with the scan like everything else that is
/// judged, so that a replay raises the same alarms. Never changes once made; <see cref="Well"/> is shared, so a quiet
/// scan allocates nothing.
/// </summary>
/// <param name="HistoryStopped">Why recording has stopped, in words; empty while it runs.</param>
/// <param name="HistoryDamaged">
/// What of the record was found damaged, and how much is missing, in words; empty where nothing is.
/// </param>
/// <param name="IsPowerLow">Whether the supply dips.</param>
public sealed record HouseReport(string HistoryStopped, string HistoryDamaged, bool IsPowerLow)
{
    private const string StoppedKey = "history-stopped=";
    private const string DamagedKey = "history-damaged=";
    private const string PowerKey = "power-low";
    private const string SelfTestKey = "self-test=";

    /// <summary>Why the daily trial of the warning chain did not come out, in words; empty while it did.</summary>
    public string SelfTestFailed { get; init; } = "";

    /// <summary>Nothing to report.</summary>
    public static HouseReport Well { get; } = new("", "", false);

    /// <summary>
    /// Reads the written form, that of a recording's <c>house</c> column; an empty text is <see cref="Well"/>.
    /// </summary>
    public static bool TryParse(ReadOnlySpan<char> written, out HouseReport report)
    {
        report = Well;
        if (written.IsEmpty)
        {
            return true;
        }

        foreach (var range in written.Split('|'))
        {
            var part = written[range];
            if (part.StartsWith(StoppedKey, StringComparison.Ordinal))
            {
                report = report with { HistoryStopped = part[StoppedKey.Length..].ToString() };
            }
            else if (part.StartsWith(DamagedKey, StringComparison.Ordinal))
            {
                report = report with { HistoryDamaged = part[DamagedKey.Length..].ToString() };
            }
            else if (part.StartsWith(SelfTestKey, StringComparison.Ordinal))
            {
                report = report with { SelfTestFailed = part[SelfTestKey.Length..].ToString() };
            }
            else if (part.SequenceEqual(PowerKey))
            {
                report = report with { IsPowerLow = true };
            }
            else
            {
                report = Well;
                return false;
            }
        }

        return true;
    }

    /// <summary>The written form that <see cref="TryParse"/> reads; empty when there is nothing to report.</summary>
    public override string ToString()
    {
        var parts = new List<string>(4);
        if (HistoryStopped.Length > 0)
        {
            parts.Add(StoppedKey + HistoryStopped.Replace('|', '/'));
        }

        if (HistoryDamaged.Length > 0)
        {
            parts.Add(DamagedKey + HistoryDamaged.Replace('|', '/'));
        }

        if (SelfTestFailed.Length > 0)
        {
            parts.Add(SelfTestKey + SelfTestFailed.Replace('|', '/'));
        }

        if (IsPowerLow)
        {
            parts.Add(PowerKey);
        }

        return string.Join('|', parts);
    }
}
