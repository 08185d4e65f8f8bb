using System.Globalization;
using OnboardHeat.Adapters.Tests.History;
using OnboardHeat.Core.Scans;
using OnboardHeat.History.Disk;

namespace OnboardHeat.Limits;

/// <summary>
/// A day with three hours' driving, scans every two seconds, on the real disk: what the kernel counts as written, and
/// the syncs.
/// </summary>
internal static class DiskWrites
{
    public static async Task<int> RunAsync(int seed, bool isShort)
    {
        var part = isShort ? 8 : 1;
        var folder = Directory.CreateTempSubdirectory("onboardheat-writes-").FullName;
        var card = new CountingCard(new CardFolder(folder));
        var before = Written();
        var rig = new RecorderRig(card);
        var some = new SomeScans(seed);
        var driving = 3 * 1800 / part;
        await FeedAsync(rig, some.Drive(1, 300), isDriving: true);
        await using var slow = rig.Recorder.Reader.ReadRunScansAsync(1, int.MaxValue, CancellationToken.None)
            .GetAsyncEnumerator();
        await FeedAsync(rig, some.Drive(1, driving - 300, fromS: 600), isDriving: true, slow);
        await FeedAsync(rig, some.Drive(1, 21 * 1800 / part, fromS: (driving * 2) + 2), isDriving: false, slow);
        await rig.DisposeAsync();
        var bytes = (Written() - before) * part;
        Directory.Delete(folder, recursive: true);
        return Verdict.AtMost("MB written a day (the kernel's count)", bytes / 1e6, 25, seed)
            | Verdict.AtMost("MB of the engine's log at most, a slow reader beside it", card.MostLog / 1e6, 10, seed)
            | Verdict.AtMost("syncs a day", card.Syncs * part, 900, seed);
    }

    private static async Task FeedAsync(
        RecorderRig rig, IEnumerable<Scan> scans, bool isDriving, IAsyncEnumerator<Scan>? slow = null)
    {
        foreach (var some in scans.Chunk(300))
        {
            foreach (var scan in some)
            {
                scan[Signal.EngineRunning] = isDriving;
            }

            await rig.FeedAsync(some);
            if (slow is not null)
            {
                await slow.MoveNextAsync();
            }
        }
    }

    private static long Written()
    {
        var line = File.ReadLines("/proc/self/io").First(l => l.StartsWith("write_bytes", StringComparison.Ordinal));
        return long.Parse(line.AsSpan(line.IndexOf(':') + 1), CultureInfo.InvariantCulture);
    }

    private sealed class CountingCard(CardFolder folder) : IRecordDisk
    {
        public long Syncs { get; private set; }

        public long MostLog { get; private set; }

        public long FreeBytes => folder.FreeBytes;

        public IReadOnlyList<string> Names() => folder.Names();

        public IRecordFile Open(string name) =>
            new Counted(this, name.Contains("-log", StringComparison.Ordinal), folder.Open(name));

        public void Rename(string from, string to) => folder.Rename(from, to);

        public void Delete(string name) => folder.Delete(name);

        public long LengthOf(string name) => folder.LengthOf(name);

        public IDisposable Lock() => folder.Lock();

        private sealed class Counted(CountingCard card, bool isLog, IRecordFile file) : IRecordFile
        {
            public long Length => file.Length;

            public int Read(long offset, Span<byte> into) => file.Read(offset, into);

            public void Write(long offset, ReadOnlySpan<byte> bytes)
            {
                card.MostLog = isLog ? Math.Max(card.MostLog, offset + bytes.Length) : card.MostLog;
                file.Write(offset, bytes);
            }

            public void SetLength(long length) => file.SetLength(length);

            public void Sync()
            {
                card.Syncs++;
                file.Sync();
            }

            public void Dispose() => file.Dispose();
        }
    }
}
