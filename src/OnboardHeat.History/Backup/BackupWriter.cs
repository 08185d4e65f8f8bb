using System.Buffers.Binary;
using OnboardHeat.History.Blocks;
using OnboardHeat.History.Files;

namespace OnboardHeat.History.Backup;

/// <summary>
/// Writes a backup: a magic and a version, then parts of a kind, a length, so many bytes and a CRC-32C that also covers
/// the one before. So a part that is missing, doubled or out of place shows as well as a flipped bit, and an end that
/// is missing shows by itself. The form is independent of the database's own.
/// </summary>
internal sealed class BackupWriter(Stream to)
{
    /// <summary>Version of the form; a newer one is refused.</summary>
    public const byte Version = 1;

    public const int HeadBytes = 5;
    public const int CrcBytes = 4;

    private uint _chain;
    private long _parts;

    public static ReadOnlySpan<byte> Magic => "OHRECORDBACKUP\n"u8;

    public async Task BeginAsync(CancellationToken cancellationToken) =>
        await to.WriteAsync((byte[])[.. Magic, Version], cancellationToken);

    public Task MonthAsync(MonthName name, About about, CancellationToken cancellationToken)
    {
        var writer = new PayloadWriter();
        writer.Text(name.Data);
        writer.Unsigned((ulong)about.Format);
        writer.Unsigned((ulong)about.FirstNumber);
        writer.Unsigned((ulong)about.FirstEntry);
        return PartAsync(BackupPartKind.Month, writer, cancellationToken);
    }

    public Task HourAsync(StoredHour hour, CancellationToken cancellationToken)
    {
        var writer = new PayloadWriter();
        writer.Unsigned((ulong)hour.Number);
        Blob(writer, hour.Scans);
        Blob(writer, hour.Entries);
        Blob(writer, hour.Rollups);
        return PartAsync(BackupPartKind.Hour, writer, cancellationToken);
    }

    public Task MinuteAsync(StoredMinute minute, CancellationToken cancellationToken)
    {
        var writer = new PayloadWriter();
        writer.Unsigned((ulong)minute.Number);
        Blob(writer, minute.Scans);
        Blob(writer, minute.Entries);
        return PartAsync(BackupPartKind.Minute, writer, cancellationToken);
    }

    public Task MonthEndAsync(IReadOnlyList<(long From, long To)> gaps, CancellationToken cancellationToken)
    {
        var writer = new PayloadWriter();
        writer.Unsigned((ulong)gaps.Count);
        foreach (var (from, last) in gaps)
        {
            writer.Unsigned((ulong)from);
            writer.Unsigned((ulong)last);
        }

        return PartAsync(BackupPartKind.MonthEnd, writer, cancellationToken);
    }

    public Task EndAsync(CancellationToken cancellationToken)
    {
        var writer = new PayloadWriter();
        writer.Unsigned((ulong)_parts);
        return PartAsync(BackupPartKind.End, writer, cancellationToken);
    }

    /// <summary>The checksum of a part, which goes on from that of the part before.</summary>
    public static uint Chained(uint before, ReadOnlySpan<byte> part)
    {
        var covered = new byte[CrcBytes + part.Length];
        BinaryPrimitives.WriteUInt32LittleEndian(covered, before);
        part.CopyTo(covered.AsSpan(CrcBytes));
        return Block.Crc32C(covered);
    }

    private static void Blob(PayloadWriter writer, byte[] bytes)
    {
        writer.Unsigned((ulong)bytes.Length);
        writer.Bytes(bytes);
    }

    private async Task PartAsync(BackupPartKind kind, PayloadWriter payload, CancellationToken cancellationToken)
    {
        var part = new byte[HeadBytes + payload.Length + CrcBytes];
        part[0] = (byte)kind;
        BinaryPrimitives.WriteInt32LittleEndian(part.AsSpan(1), payload.Length);
        payload.Written.CopyTo(part.AsSpan(HeadBytes));
        _chain = Chained(_chain, part.AsSpan(0, part.Length - CrcBytes));
        BinaryPrimitives.WriteUInt32LittleEndian(part.AsSpan(part.Length - CrcBytes), _chain);
        _parts++;
        await to.WriteAsync(part, cancellationToken);
    }
}
