namespace OnboardHeat.History.Files;

/// <summary>What a file says about itself when it is made.</summary>
/// <param name="Format">Version of the file's layout.</param>
/// <param name="FirstNumber">Running number of its first minute.</param>
/// <param name="FirstEntry">Running number of its first entry.</param>
/// <param name="Gaps">Ranges of minutes known to be missing since damage was set aside.</param>
internal sealed record About(int Format, long FirstNumber, long FirstEntry, IReadOnlyList<(long From, long To)> Gaps)
{
    /// <summary>The layout written by this version.</summary>
    public const int CurrentFormat = 1;
}
