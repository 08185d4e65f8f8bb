namespace OnboardHeat.Engine.Options;

/// <summary>The log beside the journal.</summary>
public sealed class LogOptions
{
    /// <summary>
    /// File to log to as well, absolute; left out: none. For a system without a journal that lasts. A new one each
    /// day, the last 14 are kept, none above 10 MB.
    /// </summary>
    public string? File { get; set; }
}
