using OnboardHeat.Core;
using OnboardHeat.Core.Scans;
using OnboardHeat.Daemon.Probing;
using OnboardHeat.Engine.Keeping;
using OnboardHeat.Engine.Options;

namespace OnboardHeat.Daemon.Checking;

/// <summary>Everything that <c>check</c> tells of.</summary>
internal sealed record CheckFacts
{
    /// <summary>Who looked: the running daemon, or the command itself.</summary>
    public required string Who { get; init; }

    public required Configuration Configuration { get; init; }

    public required VanDescription Van { get; init; }

    public required BusSight Bus { get; init; }

    /// <summary>The newest scan.</summary>
    public required Scan Scan { get; init; }

    /// <summary>The picture after it.</summary>
    public required Picture Picture { get; init; }

    public required KeptFileContent Kept { get; init; }

    /// <summary>The daemon's test at start, in one line; null where no daemon runs.</summary>
    public string? SelfTest { get; init; }

    /// <summary>
    /// What this run has seen otherwise than the first drive should show it, by the name of the step.
    /// </summary>
    public IReadOnlyDictionary<string, string> Doubts { get; init; } = new Dictionary<string, string>();
}
