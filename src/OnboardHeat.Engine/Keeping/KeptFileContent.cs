using OnboardHeat.Core;

namespace OnboardHeat.Engine.Keeping;

/// <summary>What the small file holds.</summary>
/// <param name="Run">Number of the run that wrote it; 0 where there are no runs (a replay).</param>
/// <param name="State">What is kept of the monitor.</param>
public sealed record KeptFileContent(int Run, KeptState State)
{
    /// <summary>Which probe sat on which channel, and what a pair check learnt of it.</summary>
    public IReadOnlyList<KeptProbe> Probes { get; init; } = [];

    /// <summary>Steps of the first drive that have been seen, by name.</summary>
    public IReadOnlyList<string> FirstDrive { get; init; } = [];
}
