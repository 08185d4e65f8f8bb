using LiteDB;
using OnboardHeat.History.Blocks;

namespace OnboardHeat.History.Files;

/// <summary>
/// Puts hours together again from pieces found page by page, in any order; what lacks a piece proves nothing and is
/// left.
/// </summary>
internal sealed class PieceGathering
{
    private readonly Dictionary<long, (byte[] First, int More)> _hours = [];
    private readonly Dictionary<long, byte[]> _pieces = [];

    public void Add(BsonDocument document)
    {
        if (!document["_id"].IsInt64)
        {
            return;
        }

        var id = document["_id"].AsInt64;
        if (document[HourPieces.Scans].IsBinary
            && document[HourPieces.More] is { IsInt32: true, AsInt32: > 0 and < HourPieces.Most })
        {
            _hours[id] = (document[HourPieces.Scans].AsBinary, document[HourPieces.More].AsInt32);
        }
        else if (document[HourPieces.Piece].IsBinary)
        {
            _pieces[id] = document[HourPieces.Piece].AsBinary;
        }
    }

    /// <summary>Every hour whose pieces are all there and whose checksum fits.</summary>
    public IEnumerable<byte[]> Blocks()
    {
        foreach (var (hour, (first, more)) in _hours)
        {
            var ids = Enumerable.Range(1, more).Select(i => HourPieces.IdOf(hour, i)).ToArray();
            if (ids.All(_pieces.ContainsKey) && Whole(first, ids) is var block && Block.TryOpen(block, out _, out _))
            {
                yield return block;
            }
        }
    }

    private byte[] Whole(byte[] first, long[] ids) => [.. first, .. ids.SelectMany(id => _pieces[id])];
}
