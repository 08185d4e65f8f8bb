using LiteDB;
using OnboardHeat.History.Disk;

namespace OnboardHeat.History.Files;

/// <summary>
/// One file of the record under the database engine, durable through our streams. Used by the owner thread only;
/// nothing lazy leaves it. Minutes are single documents until their hour is packed; an hour's scans and its digest
/// (entries, roll-ups) are two.
/// </summary>
internal sealed class MonthFile : IDisposable
{
    /// <summary>A log longer than this is brought into the data file; half of the 10 MB it may never pass.</summary>
    private const long LogLimitBytes = 5 << 20;

    private readonly CardTrouble _trouble = new();
    private readonly CalmFile _logFile;
    private readonly DataStream _data;
    private readonly LogStream _log;
    private readonly LiteDatabase _engine;
    private readonly ILiteCollection<BsonDocument> _minutes;
    private readonly ILiteCollection<BsonDocument> _hours;
    private readonly ILiteCollection<BsonDocument> _pieces;
    private readonly ILiteCollection<BsonDocument> _digests;

    private MonthFile(IRecordFile data, IRecordFile log)
    {
        _logFile = new CalmFile(log, _trouble);
        _data = new DataStream(new CalmFile(data, _trouble));
        _log = new LogStream(_logFile);
        try
        {
            _engine = new LiteDatabase(_data, new BsonMapper(), _log);
            if (_engine.CheckpointSize != 0)
            {
                _engine.CheckpointSize = 0;
            }

            _trouble.ThrowIfThere();
        }
        catch
        {
            _engine?.Dispose();
            _data.Dispose();
            _log.Dispose();
            throw;
        }

        _minutes = _engine.GetCollection("minutes", BsonAutoId.Int64);
        _hours = _engine.GetCollection("hours", BsonAutoId.Int64);
        _pieces = _engine.GetCollection("pieces", BsonAutoId.Int64);
        _digests = _engine.GetCollection("digests", BsonAutoId.Int64);
    }

    /// <summary>Length of the engine's log.</summary>
    public long LogBytes => _logFile.Length;

    /// <summary>Opens a file, and makes it where it is missing or empty.</summary>
    public static MonthFile Open(IRecordDisk disk, string data, string log)
    {
        var dataFile = disk.Open(data);
        try
        {
            return new MonthFile(dataFile, disk.Open(log));
        }
        catch
        {
            dataFile.Dispose();
            throw;
        }
    }

    /// <summary>Opens a file to look at: nothing of it changes on the card.</summary>
    public static MonthFile Look(IRecordDisk disk, MonthName name) => Look(disk, name.Data, name.Log);

    /// <summary>The same for a file under any name.</summary>
    public static MonthFile Look(IRecordDisk disk, string dataName, string logName)
    {
        var dataFile = disk.Open(dataName);
        try
        {
            var log = disk.LengthOf(logName) > 0 ? disk.Open(logName) : null;
            return new MonthFile(new OverlayFile(dataFile), log is null ? new MemoryFile() : new OverlayFile(log));
        }
        catch
        {
            dataFile.Dispose();
            throw;
        }
    }

    public About? ReadAbout()
    {
        var found = _engine.GetCollection("about").FindById(1);
        if (found is null)
        {
            return null;
        }

        var gaps = found["gaps"].AsArray.Select(gap => (gap["from"].AsInt64, gap["to"].AsInt64)).ToArray();
        return new About(found["format"].AsInt32, found["firstNumber"].AsInt64, found["firstEntry"].AsInt64, gaps);
    }

    public void WriteAbout(About about)
    {
        var gaps = about.Gaps.Select(gap => new BsonDocument { ["from"] = gap.From, ["to"] = gap.To });
        _engine.GetCollection("about").Upsert(new BsonDocument
        {
            ["_id"] = 1,
            ["format"] = about.Format,
            ["firstNumber"] = about.FirstNumber,
            ["firstEntry"] = about.FirstEntry,
            ["gaps"] = new BsonArray(gaps),
        });
        _trouble.ThrowIfThere();
    }

    /// <summary>Adds a minute. When it returns, the minute is on the card.</summary>
    public void Append(StoredMinute minute)
    {
        _minutes.Insert(new BsonDocument { ["_id"] = minute.Number, ["s"] = minute.Scans, ["e"] = minute.Entries });
        _trouble.ThrowIfThere();
    }

    /// <summary>Puts an hour in the place of its minutes.</summary>
    public void Pack(StoredHour hour, IReadOnlyList<long> minutes)
    {
        var pieces = HourPieces.Cut(hour.Scans);
        _hours.Insert(new BsonDocument { ["_id"] = hour.Number, [HourPieces.Scans] = pieces[0],
            [HourPieces.More] = pieces.Count - 1 });
        for (var i = 1; i < pieces.Count; i++)
        {
            _pieces.Insert(
                new BsonDocument { ["_id"] = HourPieces.IdOf(hour.Number, i), [HourPieces.Piece] = pieces[i] });
        }

        _digests.Insert(new BsonDocument { ["_id"] = hour.Number, ["e"] = hour.Entries, ["r"] = hour.Rollups });
        foreach (var number in minutes)
        {
            _minutes.Delete(number);
        }
    }

    /// <summary>
    /// Makes all that is done in it one transaction: after a power cut there is all of it or nothing.
    /// </summary>
    public void Together(Action change)
    {
        _engine.BeginTrans();
        try
        {
            change();
            _engine.Commit();
        }
        catch
        {
            TryRollback();
            throw;
        }

        _trouble.ThrowIfThere();
    }

    /// <summary>Minutes not yet packed, from a number on, in order.</summary>
    public IReadOnlyList<StoredMinute> ReadMinutes(long from, int max) =>
        [.. From(_minutes, from, max).Select(d => new StoredMinute(d["_id"].AsInt64, Bytes(d, "s"), Bytes(d, "e")))];

    /// <summary>Scans of packed hours, from a number on, in order.</summary>
    public IReadOnlyList<(long Number, byte[] Scans)> ReadHours(long from, int max) =>
        [.. From(_hours, from, max).Select(hour => (hour["_id"].AsInt64, Whole(hour)))];

    /// <summary>Entries and roll-ups of packed hours, from a number on, in order.</summary>
    public IReadOnlyList<(long Number, byte[] Entries, byte[] Rollups)> ReadDigests(long from, int max) =>
        [.. From(_digests, from, max).Select(d => (d["_id"].AsInt64, Bytes(d, "e"), Bytes(d, "r")))];

    /// <summary>Brings the log into the data file when it has grown, or when told to.</summary>
    public void Checkpoint(bool isDue)
    {
        if (isDue || LogBytes > LogLimitBytes)
        {
            _engine.Checkpoint();
            _trouble.ThrowIfThere();
        }
    }

    public void Dispose()
    {
        try
        {
            _engine.Dispose();
        }
        catch (Exception e) when (
            e is LiteException or IOException or ObjectDisposedException or NullReferenceException)
        {
            // The engine is unusable after a failed write; what was acknowledged is on the card already.
        }
        finally
        {
            _data.Dispose();
            _log.Dispose();
        }
    }

    private byte[] Whole(BsonDocument hour)
    {
        var first = Bytes(hour, HourPieces.Scans);
        var more = hour[HourPieces.More].IsInt32 ? hour[HourPieces.More].AsInt32 : 0;
        if (more is <= 0 or >= HourPieces.Most)
        {
            return first;
        }

        var rest = From(_pieces, HourPieces.IdOf(hour["_id"].AsInt64, 1), more)
            .Select(piece => Bytes(piece, HourPieces.Piece));
        return [.. first, .. rest.SelectMany(bytes => bytes)];
    }

    private static byte[] Bytes(BsonDocument document, string field) => document[field].IsBinary
        ? document[field].AsBinary : [];

    private IReadOnlyList<BsonDocument> From(ILiteCollection<BsonDocument> collection, long from, int max)
    {
        IReadOnlyList<BsonDocument> found = [.. collection.Find(Query.GTE("_id", from), limit: max)];
        _trouble.ThrowIfThere();
        return found;
    }

    private void TryRollback()
    {
        try
        {
            _engine.Rollback();
        }
        catch (Exception e) when (
            e is LiteException or IOException or ObjectDisposedException or NullReferenceException)
        {
            // The failure that led here is the one to tell.
        }
    }
}
