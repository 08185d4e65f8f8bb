namespace OnboardHeat.History.Blocks;

/// <summary>Ties a run's elapsed time to the wall clock at one moment.</summary>
internal readonly record struct TimeAnchor(AnchorQuality Quality, TimeSpan Elapsed, long UtcTicks)
{
    /// <summary>Ties that differ by less say the same: a clock that runs true is corrected by milliseconds.</summary>
    private static readonly TimeSpan s_alikeWithin = TimeSpan.FromSeconds(1);

    /// <summary>Whether both date a moment alike, and as trustworthily.</summary>
    public bool SaysAlike(in TimeAnchor other) => Quality == other.Quality
        && (Quality == AnchorQuality.None
            || Math.Abs((UtcTicks - other.UtcTicks) - (Elapsed - other.Elapsed).Ticks) <= s_alikeWithin.Ticks);

    /// <summary>The date at another moment of the same run.</summary>
    public DateTimeOffset DateAt(TimeSpan elapsed)
    {
        var ticks = UtcTicks + (elapsed - Elapsed).Ticks;
        return new DateTimeOffset(Math.Clamp(ticks, 0, DateTime.MaxValue.Ticks), TimeSpan.Zero);
    }
}
