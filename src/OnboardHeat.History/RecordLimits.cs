namespace OnboardHeat.History;

/// <summary>How much the record may take.</summary>
/// <param name="KeepMonths">Months that are kept; whole files go, never parts of one. 1 or more.</param>
/// <param name="FreeBytes">
/// Recording pauses while the card has less free than this: a full card stops more than the record.
/// </param>
internal sealed record RecordLimits(int KeepMonths, long FreeBytes)
{
    /// <summary>Two years, and 64 MB left free (several files' growth; common practice, no source).</summary>
    public static RecordLimits Default { get; } = new(24, 64L << 20);
}
