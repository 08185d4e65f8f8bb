namespace OnboardHeat.History.Blocks;

/// <summary>What a block holds.</summary>
internal enum BlockKind : byte
{
    /// <summary>Scans as they were given to the Monitor.</summary>
    Scans = (byte)'S',

    /// <summary>Events, figures and cursors.</summary>
    Entries = (byte)'E',

    /// <summary>Minima, means and maxima of ten minutes each.</summary>
    Rollups = (byte)'R',
}
