using System.Text;
using OnboardHeat.Core.Scans;
using OnboardHeat.Engine.Ports;
using OnboardHeat.History;
using OnboardHeat.History.Backup;
using OnboardHeat.History.Files;

namespace OnboardHeat.Adapters.Tests.History;

public sealed class RecordVaultTests
{
    private static readonly CancellationToken s_never = CancellationToken.None;

    [Fact]
    public async Task BackupWhileRecording_RestoresToTheSameScansAndEvents()
    {
        var card = await ThreeMonthsAsync(51);
        await using var running = new RecorderRig(card);
        await running.SettleAsync();
        var backup = await BackUpAsync(running.Recorder.Vault);
        var (scans, events) = await ReadAsync(running.Recorder.Reader);

        var empty = new SimulatedCard();
        var lines = await RestoreClosedAsync(empty, backup);

        Assert.Equal(3, lines.Count(line => line.StartsWith("restored and verified", StringComparison.Ordinal)));
        await using var restored = new RecorderRig(empty);
        await restored.SettleAsync();
        var back = await ReadAsync(restored.Recorder.Reader);
        Assert.Equal(scans.Count, back.Scans.Count);
        Assert.All(scans.Zip(back.Scans), pair => Assert.Equal("", ScanCompare.Difference(pair.First, pair.Second)));
        Assert.Equal(events, back.Events);
        Assert.Empty(restored.Said);
    }

    [Fact]
    public async Task MonthThatIsGone_ComesBackBesideARunningRecorder()
    {
        var card = await ThreeMonthsAsync(52);
        byte[] backup;
        await using (var before = new RecorderRig(card))
        {
            await before.SettleAsync();
            backup = await BackUpAsync(before.Recorder.Vault);
        }

        var lost = card.Names().Single(name => name.Contains("2026-06", StringComparison.Ordinal)
            && name.EndsWith("06.db", StringComparison.Ordinal));
        card.Delete(lost);
        await using var running = new RecorderRig(card);
        await running.SettleAsync();
        var lines = await running.Recorder.Vault.RestoreAsync(new MemoryStream(backup), s_never);

        Assert.Equal(2, lines.Count(line => line.Contains("on record already", StringComparison.Ordinal)));
        Assert.Single(lines, line => line.StartsWith("restored and verified: 2026-06", StringComparison.Ordinal));
        Assert.Contains(await running.Recorder.Reader.ReadMonthsAsync(s_never), month => month.Name == lost);
        Assert.Equal(3, (await running.Recorder.Reader.ReadRunsAsync(s_never)).Count);
    }

    [Fact]
    public async Task BackupDamagedAnywhere_IsRefusedByTheVerification()
    {
        const int seed = 53;
        var card = new SimulatedCard();
        await FeedAsync(card, new SomeScans(seed).Drive(1, 60));
        await using var rig = new RecorderRig(card);
        await rig.SettleAsync();
        var backup = await BackUpAsync(rig.Recorder.Vault);
        var random = new Random(seed);
        for (var i = 0; i < 100; i++)
        {
            var flipped = backup.ToArray();
            flipped[random.Next(flipped.Length)] ^= (byte)(1 << random.Next(8));
            await Assert.ThrowsAsync<InvalidDataException>(
                () => BackupFile.ReadAsync(new MemoryStream(flipped), s_never));
            var cut = backup[..random.Next(backup.Length)];
            await Assert.ThrowsAsync<InvalidDataException>(() => BackupFile.ReadAsync(new MemoryStream(cut), s_never));
        }
    }

    [Fact]
    public async Task BackupOfANewerVersion_IsRefusedAndNamed()
    {
        byte[] newer = [.. BackupWriter.Magic, BackupWriter.Version + 1];
        var refused = await Assert.ThrowsAsync<InvalidDataException>(
            () => BackupFile.ReadAsync(new MemoryStream(newer), s_never));
        Assert.Contains("has format 2", refused.Message, StringComparison.Ordinal);
        var text = new MemoryStream(Encoding.UTF8.GetBytes("a letter"));
        await Assert.ThrowsAsync<InvalidDataException>(() => BackupFile.ReadAsync(text, s_never));
    }

    [Fact]
    public async Task BackupOfAnotherRecord_IsRefusedAndChangesNothing()
    {
        var other = new SimulatedCard();
        await FeedAsync(other, new SomeScans(54).Drive(1, 1500));
        await using var rig = new RecorderRig(other);
        await rig.SettleAsync();
        var backup = await BackUpAsync(rig.Recorder.Vault);

        var card = await ThreeMonthsAsync(55);
        card.Delete(card.Names().Single(name => name.EndsWith("2026-05.db", StringComparison.Ordinal)));
        await FeedAsync(card, new SomeScans(56).Drive(9, 40, start: SomeScans.Start.AddDays(100)));
        var names = card.Names().Order().ToArray();
        await Assert.ThrowsAsync<IOException>(() => RestoreClosedAsync(card, backup));
        Assert.Equal(names, card.Names().Order());
    }

    /// <summary>A run in each of three months.</summary>
    private static async Task<SimulatedCard> ThreeMonthsAsync(int seed)
    {
        var card = new SimulatedCard();
        for (var month = 0; month < 3; month++)
        {
            await FeedAsync(card,
                new SomeScans(seed + month).Drive(month + 1, 700, start: SomeScans.Start.AddMonths(month)));
        }

        return card;
    }

    private static async Task FeedAsync(SimulatedCard card, IEnumerable<Scan> scans)
    {
        await using var rig = new RecorderRig(card);
        await rig.FeedAsync(scans);
    }

    private static async Task<byte[]> BackUpAsync(IRecordVault vault)
    {
        using var backup = new MemoryStream();
        await vault.BackUpAsync(backup, s_never);
        return backup.ToArray();
    }

    private static async Task<IReadOnlyList<string>> RestoreClosedAsync(SimulatedCard card, byte[] backup)
    {
        await using var record = ClosedRecord.Of(card);
        return await record.Vault.RestoreAsync(new MemoryStream(backup), s_never);
    }

    private static async Task<(List<Scan> Scans, List<RecordedEvent> Events)> ReadAsync(IRecordReader reader)
    {
        var scans = new List<Scan>();
        await foreach (var scan in reader.ReadRunScansAsync(1, int.MaxValue, s_never))
        {
            scans.Add(scan);
        }

        var events = new List<RecordedEvent>();
        await foreach (
            var happened in reader.ReadEventsAsync(DateTimeOffset.MinValue, DateTimeOffset.MaxValue, s_never))
        {
            events.Add(happened);
        }

        return (scans, events);
    }
}
