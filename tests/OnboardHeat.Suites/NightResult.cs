namespace OnboardHeat.Suites;

/// <summary>One night: what drained, what was told, and how far the figures were off.</summary>
internal sealed class NightResult
{
    public required int Seed { get; init; }

    public required double TrueLossWPerK { get; init; }

    public double? DrainsFromS { get; set; }

    public double? ToldAtS { get; set; }

    public double? LossWPerK { get; set; }

    public double? LearntWPerK { get; set; }

    public List<double> StoredErrors { get; } = [];
}
