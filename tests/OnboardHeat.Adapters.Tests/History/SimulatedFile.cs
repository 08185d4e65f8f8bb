using System.Runtime.InteropServices;

namespace OnboardHeat.Adapters.Tests.History;

/// <summary>
/// A file of the simulated card: what programs see, what is surely on the card, and what is on its way there.
/// </summary>
internal sealed class SimulatedFile(SimulatedCard card, byte[] content)
{
    private readonly List<(long Offset, byte[]? Bytes)> _onTheWay = [];
    private List<byte> _synced = [.. content];

    /// <summary>What programs see.</summary>
    public List<byte> Seen { get; } = [.. content];

    public int Read(long offset, Span<byte> into)
    {
        var had = (int)Math.Clamp(Seen.Count - offset, 0, into.Length);
        if (had > 0)
        {
            CollectionsMarshal.AsSpan(Seen).Slice((int)offset, had).CopyTo(into);
        }

        return had;
    }

    public void Write(long offset, ReadOnlySpan<byte> bytes)
    {
        card.Do("write", bytes.Length);
        _onTheWay.Add((offset, bytes.ToArray()));
        Put(Seen, offset, bytes);
    }

    public void SetLength(long length)
    {
        card.Do("set length");
        _onTheWay.Add((length, null));
        CollectionsMarshal.SetCount(Seen, (int)length);
    }

    public void Sync()
    {
        card.Do("sync");
        _synced = [.. Seen];
        _onTheWay.Clear();
    }

    public byte[] AfterPowerCut(Random random)
    {
        var found = new List<byte>(_synced);
        foreach (var (offset, bytes) in _onTheWay)
        {
            if (bytes is null)
            {
                if (random.Next(2) == 0)
                {
                    var before = found.Count;
                    CollectionsMarshal.SetCount(found, (int)offset);
                    CollectionsMarshal.AsSpan(found)[Math.Min(before, found.Count)..].Clear();
                }

                continue;
            }

            // Each sector by itself: a write is lost whole, arrives whole, or only some of its sectors do.
            var fate = random.Next(3);
            for (var at = 0; at < bytes.Length; at += SimulatedCard.SectorBytes)
            {
                if (fate == 1 || (fate == 2 && random.Next(2) == 0))
                {
                    Put(found, offset + at, bytes.AsSpan(at, Math.Min(SimulatedCard.SectorBytes, bytes.Length - at)));
                }
            }
        }

        return [.. found];
    }

    private static void Put(List<byte> into, long offset, ReadOnlySpan<byte> bytes)
    {
        var end = (int)offset + bytes.Length;
        if (end > into.Count)
        {
            var before = into.Count;
            CollectionsMarshal.SetCount(into, end);
            CollectionsMarshal.AsSpan(into)[before..].Clear();
        }

        bytes.CopyTo(CollectionsMarshal.AsSpan(into)[(int)offset..]);
    }
}
