namespace OnboardHeat.History.Blocks;

/// <summary>How far a block's wall-clock anchor can be believed.</summary>
internal enum AnchorQuality : byte
{
    /// <summary>No scan of the block had a wall-clock label.</summary>
    None,

    /// <summary>What an untrusted clock claimed.</summary>
    Claimed,

    /// <summary>The clock was known to be right.</summary>
    Trusted,
}
