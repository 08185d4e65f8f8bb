namespace OnboardHeat.History.Backup;

/// <summary>What a part of a backup is.</summary>
internal enum BackupPartKind : byte
{
    /// <summary>A month begins.</summary>
    Month = (byte)'M',

    /// <summary>A packed hour.</summary>
    Hour = (byte)'H',

    /// <summary>A minute that is not packed yet.</summary>
    Minute = (byte)'m',

    /// <summary>The month is whole; what is known to be missing in it.</summary>
    MonthEnd = (byte)'E',

    /// <summary>The backup is whole.</summary>
    End = (byte)'Z',
}
