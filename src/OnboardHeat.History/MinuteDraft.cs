using OnboardHeat.History.Blocks;

namespace OnboardHeat.History;

/// <summary>
/// A closed minute before it has its numbers: what waits in the ring while the card cannot be written.
/// </summary>
/// <param name="Header">Run, elapsed times, count and anchor; numbers are still 0.</param>
/// <param name="Scans">The scans' payload.</param>
/// <param name="Entries">Events and figures.</param>
internal sealed record MinuteDraft(BlockHeader Header, byte[] Scans, IReadOnlyList<Entry> Entries)
{
    /// <summary>About how much memory it takes.</summary>
    public int Bytes => Scans.Length + (Entries.Count * 200) + 200;
}
