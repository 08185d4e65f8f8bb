namespace OnboardHeat.History.ReadBack;

/// <summary>Some blocks in order, and where to go on.</summary>
/// <param name="Blocks">The blocks.</param>
/// <param name="Next">Running number to ask for next.</param>
/// <param name="IsEnd">Whether nothing more is there.</param>
internal sealed record BlockBatch(IReadOnlyList<OpenedBlock> Blocks, long Next, bool IsEnd)
{
    public static BlockBatch Empty { get; } = new([], 0, IsEnd: true);
}
