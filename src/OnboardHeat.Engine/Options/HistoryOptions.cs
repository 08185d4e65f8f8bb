namespace OnboardHeat.Engine.Options;

/// <summary>The record of readings, alarms and actions.</summary>
public sealed class HistoryOptions
{
    /// <summary>
    /// Folder of the record and of what was learnt, absolute; default <c>/var/lib/onboardheat</c>.
    /// </summary>
    public string Folder { get; set; } = "/var/lib/onboardheat";

    /// <summary>
    /// Months that are kept, 1 to 240; default 36: three winters to compare. Whole months go at a time.
    /// </summary>
    public int KeepMonths { get; set; } = 36;
}
