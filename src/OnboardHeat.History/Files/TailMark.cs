using System.Buffers.Binary;
using OnboardHeat.History.Blocks;
using OnboardHeat.History.Disk;

namespace OnboardHeat.History.Files;

/// <summary>
/// A small file that says how far the record went. A log that was cut short by damage looks like one that never was
/// longer; this tells them apart. Written after each commit and not synced by it: after a power cut it may lag behind
/// the record, never run ahead of it.
/// </summary>
internal sealed class TailMark(IRecordDisk disk) : IDisposable
{
    public const string Name = "tail.mark";

    /// <summary>Two places a sector apart, written by turns: a torn one leaves the other.</summary>
    private const int PlaceBytes = 512;

    private const int MarkBytes = 28;

    private IRecordFile? _file;
    private bool _isNew;

    /// <summary>Number of the newest minute and of the newest entry; null where there is no mark (yet).</summary>
    public (long Number, long Entry)? Read()
    {
        (long Number, long Entry)? newest = null;
        Span<byte> place = stackalloc byte[MarkBytes];
        for (var i = 0; i < 2; i++)
        {
            if (Open().Read(i * PlaceBytes, place) == MarkBytes && place[..4].SequenceEqual("OHTM"u8)
                && BinaryPrimitives.ReadUInt32LittleEndian(place[24..]) == Block.Crc32C(place[..24]))
            {
                var number = BinaryPrimitives.ReadInt64LittleEndian(place[8..]);
                if (newest is null || number > newest.Value.Number)
                {
                    newest = (number, BinaryPrimitives.ReadInt64LittleEndian(place[16..]));
                }
            }
        }

        return newest;
    }

    public void Write(long number, long entry)
    {
        Span<byte> place = stackalloc byte[MarkBytes];
        place.Clear();
        "OHTM"u8.CopyTo(place);
        BinaryPrimitives.WriteInt64LittleEndian(place[8..], number);
        BinaryPrimitives.WriteInt64LittleEndian(place[16..], entry);
        BinaryPrimitives.WriteUInt32LittleEndian(place[24..], Block.Crc32C(place[..24]));
        Open().Write((number & 1) * PlaceBytes, place);
        if (_isNew)
        {
            Sync();
            _isNew = false;
        }
    }

    public void Sync() => Open().Sync();

    public void Dispose() => _file?.Dispose();

    private IRecordFile Open()
    {
        if (_file is null)
        {
            _file = disk.Open(Name);
            _isNew = _file.Length == 0;
        }

        return _file;
    }
}
