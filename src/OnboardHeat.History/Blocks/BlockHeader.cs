namespace OnboardHeat.History.Blocks;

/// <summary>What a block says about itself.</summary>
/// <param name="Kind">What it holds.</param>
/// <param name="Run">Run number; a block holds one run only.</param>
/// <param name="FirstNumber">Running number of the first minute block in it.</param>
/// <param name="LastNumber">
/// Running number of the last one; the next block goes on from there, so a missing one shows.
/// </param>
/// <param name="First">Elapsed time of the first scan.</param>
/// <param name="Last">Elapsed time of the last scan.</param>
/// <param name="Count">How many scans, entries or spans.</param>
/// <param name="FirstEntry">Running number of the first entry (entries only; else 0).</param>
/// <param name="Anchor">The block's tie to the wall clock.</param>
internal readonly record struct BlockHeader(
    BlockKind Kind, int Run, long FirstNumber, long LastNumber, TimeSpan First, TimeSpan Last, int Count,
    long FirstEntry, TimeAnchor Anchor);
