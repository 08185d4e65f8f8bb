using System.Buffers.Binary;
using System.Globalization;
using System.Runtime.CompilerServices;
using OnboardHeat.History.Blocks;
using OnboardHeat.History.Files;

namespace OnboardHeat.History.Backup;

/// <summary>
/// Reads a backup part by part and believes nothing whose checksum does not fit; a backup without its end is not one.
/// </summary>
internal sealed class BackupReader(Stream from)
{
    /// <summary>No part is longer; a damaged length must not take all memory.</summary>
    private const int PartBytesMax = 16 << 20;

    private uint _chain;
    private long _parts;

    /// <summary>All parts up to the end, each verified before it is given.</summary>
    /// <exception cref="InvalidDataException">This is no backup, a damaged one, or one of a newer version.</exception>
    public async IAsyncEnumerable<BackupPart> ReadAsync([EnumeratorCancellation] CancellationToken cancellationToken)
    {
        await BeginAsync(cancellationToken);
        BackupPart part;
        do
        {
            part = await PartAsync(cancellationToken);
            yield return part;
        }
        while (part.Kind != BackupPartKind.End);

        if (await from.ReadAsync(new byte[1], cancellationToken) != 0)
        {
            throw Damaged("something follows its end");
        }
    }

    private static InvalidDataException Damaged(string how) => new($"the backup is damaged: {how}");

    private async Task BeginAsync(CancellationToken cancellationToken)
    {
        var head = new byte[BackupWriter.Magic.Length + 1];
        if (await from.ReadAtLeastAsync(head, head.Length, throwOnEndOfStream: false, cancellationToken) < head.Length
            || !head.AsSpan().StartsWith(BackupWriter.Magic))
        {
            throw new InvalidDataException("this is no backup of a record");
        }

        if (head[^1] != BackupWriter.Version)
        {
            throw new InvalidDataException(string.Create(
                CultureInfo.InvariantCulture,
                $"the backup has format {head[^1]}; this version knows format {BackupWriter.Version}"));
        }
    }

    private async Task<BackupPart> PartAsync(CancellationToken cancellationToken)
    {
        try
        {
            var head = new byte[BackupWriter.HeadBytes];
            await from.ReadExactlyAsync(head, cancellationToken);
            var length = BinaryPrimitives.ReadInt32LittleEndian(head.AsSpan(1));
            if (length is < 0 or > PartBytesMax)
            {
                throw Damaged("a part has no length that can be");
            }

            var part = new byte[head.Length + length];
            head.CopyTo(part, 0);
            await from.ReadExactlyAsync(part.AsMemory(head.Length), cancellationToken);
            var crc = new byte[BackupWriter.CrcBytes];
            await from.ReadExactlyAsync(crc, cancellationToken);
            _chain = BackupWriter.Chained(_chain, part);
            return BinaryPrimitives.ReadUInt32LittleEndian(crc) == _chain
                ? Part((BackupPartKind)head[0], part.AsSpan(head.Length))
                : throw Damaged("a checksum does not fit");
        }
        catch (EndOfStreamException)
        {
            throw Damaged("its end is missing");
        }
    }

    private BackupPart Part(BackupPartKind kind, ReadOnlySpan<byte> payload)
    {
        var reader = new PayloadReader(payload);
        _parts++;
        switch (kind)
        {
            case BackupPartKind.Month:
                return MonthName.TryParse(reader.Text(), out var name)
                    ? new BackupPart(
                        kind, name, new About((int)reader.Unsigned(), (long)reader.Unsigned(), (long)reader.Unsigned(),
                        []))
                    : throw Damaged("a month has no name");
            case BackupPartKind.Hour:
                var hour = (long)reader.Unsigned();
                return new BackupPart(kind, Hour: new StoredHour(
                    hour, Sealed(ref reader, BlockKind.Scans), Sealed(ref reader, BlockKind.Entries),
                    Sealed(ref reader, BlockKind.Rollups)));
            case BackupPartKind.Minute:
                var minute = (long)reader.Unsigned();
                return new BackupPart(kind, Minute: new StoredMinute(
                    minute, Sealed(ref reader, BlockKind.Scans), Sealed(ref reader, BlockKind.Entries)));
            case BackupPartKind.MonthEnd:
                var gaps = new (long From, long To)[reader.Count(payload.Length)];
                foreach (ref var gap in gaps.AsSpan())
                {
                    gap = ((long)reader.Unsigned(), (long)reader.Unsigned());
                }

                return new BackupPart(kind, Gaps: gaps);
            case BackupPartKind.End when (long)reader.Unsigned() == _parts - 1:
                return new BackupPart(kind);
            default:
                throw Damaged("a part is none that there is");
        }
    }

    private static byte[] Sealed(ref PayloadReader reader, BlockKind kind)
    {
        var block = reader.Bytes(reader.Count(PartBytesMax)).ToArray();
        return Block.TryOpen(block, out var header, out _) && header.Kind == kind ? block
            : throw Damaged($"a block of {kind} is none");
    }
}
