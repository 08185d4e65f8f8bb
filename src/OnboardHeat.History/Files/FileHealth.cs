namespace OnboardHeat.History.Files;

/// <summary>What reading a whole file found.</summary>
internal sealed record FileHealth
{
    /// <summary>What the file says about itself; null where it says nothing.</summary>
    public About? About { get; init; }

    /// <summary>What is wrong with it, in words; empty when it is sound.</summary>
    public IReadOnlyList<string> Problems { get; init; } = [];

    /// <summary>Whether a newer version wrote it: it is left alone.</summary>
    public bool IsNewer { get; init; }

    /// <summary>Number of the newest minute; the one before the file's first where it holds none.</summary>
    public long LastNumber { get; init; }

    /// <summary>Number that the next entry gets.</summary>
    public long NextEntry { get; init; }

    /// <summary>The runs in it, in order.</summary>
    public IReadOnlyList<RunSpan> Runs { get; init; } = [];

    /// <summary>Where the receivers stand.</summary>
    public IReadOnlyDictionary<string, long> Cursors { get; init; } = new Dictionary<string, long>();

    public bool IsSound => Problems.Count == 0 && !IsNewer;
}
