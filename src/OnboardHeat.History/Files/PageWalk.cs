using System.Buffers.Binary;
using LiteDB;
using OnboardHeat.History.Blocks;
using OnboardHeat.History.Disk;

namespace OnboardHeat.History.Files;

/// <summary>
/// Finds blocks in a file that the engine cannot read (any more), by walking its pages: no index, no header, no free
/// list is needed. It looks at the pages as the data file holds them and as they are with the log laid over; what it
/// finds proves itself by checksum.
/// </summary>
internal static class PageWalk
{
    private const int HeaderBytes = 32;
    private const int TypeAt = 4;
    private const int MarkAt = 18;
    private const int TransactionAt = 14;
    private const byte DataPage = 4;
    private const int HighestSlotAt = 30;
    private const int SlotBytes = 4;
    private const int ChainBytes = 6;

    /// <summary>A document spans no more pages than this (an hour's scans are far below a megabyte).</summary>
    private const int MostPages = 512;

    /// <summary>Every sealed block that is sound, in no order; the same one may come twice.</summary>
    public static IEnumerable<byte[]> Find(IRecordFile data, IRecordFile? log)
    {
        var pages = Read(data);
        foreach (var block in FindIn(pages))
        {
            yield return block;
        }

        if (log is null || log.Length == 0)
        {
            yield break;
        }

        Overlay(pages, log);
        foreach (var block in FindIn(pages))
        {
            yield return block;
        }
    }

    private static Dictionary<uint, byte[]> Read(IRecordFile file)
    {
        var pages = new Dictionary<uint, byte[]>();
        for (var offset = 0L; offset < file.Length; offset += LogStream.PageBytes)
        {
            var page = new byte[LogStream.PageBytes];
            file.Read(offset, page);
            pages[(uint)(offset / LogStream.PageBytes)] = page;
        }

        return pages;
    }

    /// <summary>Lays the log's pages over, those of finished transactions only.</summary>
    private static void Overlay(Dictionary<uint, byte[]> pages, IRecordFile log)
    {
        var waiting = new Dictionary<uint, List<byte[]>>();
        foreach (var page in Read(log).OrderBy(p => p.Key).Select(p => p.Value))
        {
            var transaction = BinaryPrimitives.ReadUInt32LittleEndian(page.AsSpan(TransactionAt));
            if (!waiting.TryGetValue(transaction, out var own))
            {
                waiting[transaction] = own = [];
            }

            own.Add(page);
            if (page[MarkAt] != 0)
            {
                own.ForEach(p => pages[BinaryPrimitives.ReadUInt32LittleEndian(p)] = p);
                waiting.Remove(transaction);
            }
        }
    }

    private static IEnumerable<byte[]> FindIn(Dictionary<uint, byte[]> pages)
    {
        var pieces = new PieceGathering();
        foreach (var page in pages.Values)
        {
            if (page[TypeAt] != DataPage)
            {
                continue;
            }

            for (var slot = 0; slot <= page[HighestSlotAt] && slot < byte.MaxValue; slot++)
            {
                foreach (var block in BlocksOf(Document(pages, page, slot), pieces))
                {
                    yield return block;
                }
            }
        }

        foreach (var block in pieces.Blocks())
        {
            yield return block;
        }
    }

    private static List<byte[]> BlocksOf(byte[]? document, PieceGathering pieces)
    {
        var found = new List<byte[]>();
        if (document is null)
        {
            return found;
        }

        try
        {
            var read = BsonSerializer.Deserialize(document);
            pieces.Add(read);
            foreach (var value in read.Values)
            {
                if (value.IsBinary && Block.TryOpen(value.AsBinary, out _, out _))
                {
                    found.Add(value.AsBinary);
                }
            }
        }
        catch (Exception e) when (FileCheck.IsEngineTrouble(e))
        {
            // Not a document (any more): there is nothing to rescue here.
        }

        return found;
    }

    /// <summary>
    /// The bytes of a document that begins in this slot, gathered along its chain; null where none does.
    /// </summary>
    private static byte[]? Document(Dictionary<uint, byte[]> pages, byte[] page, int slot)
    {
        var bytes = new MemoryStream();
        for (var hop = 0; hop < MostPages; hop++)
        {
            if (Slot(page, slot) is not { } range || (hop == 0) != (page[range.Start.Value] == 0))
            {
                return null;
            }

            var item = page.AsSpan(range);
            bytes.Write(item[ChainBytes..]);
            var next = BinaryPrimitives.ReadUInt32LittleEndian(item[1..]);
            if (next == uint.MaxValue)
            {
                return bytes.ToArray();
            }

            slot = item[ChainBytes - 1];
            if (!pages.TryGetValue(next, out page!))
            {
                return null;
            }
        }

        return null;
    }

    private static Range? Slot(byte[] page, int slot)
    {
        var at = LogStream.PageBytes - ((slot + 1) * SlotBytes);
        var length = BinaryPrimitives.ReadUInt16LittleEndian(page.AsSpan(at));
        var position = BinaryPrimitives.ReadUInt16LittleEndian(page.AsSpan(at + 2));
        return position >= HeaderBytes && length > ChainBytes && position + length <= at ? position..(position + length)
            : null;
    }
}
