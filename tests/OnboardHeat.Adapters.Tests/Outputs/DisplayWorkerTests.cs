using Microsoft.Extensions.Time.Testing;
using OnboardHeat.Adapters.Tests.Messaging;
using OnboardHeat.Adapters.Tests.Support;
using OnboardHeat.Core.Watch;
using OnboardHeat.Engine;
using OnboardHeat.Engine.Options;
using OnboardHeat.Outputs.Showing;

namespace OnboardHeat.Adapters.Tests.Outputs;

/// <summary>
/// The small display on a fake bus. Commands and figures are those of the SSD1306 data sheet (a maker's data sheet):
/// A8 multiplex ratio, DA COM pins, 21 and 22 column and page range, 81 contrast, AE and AF off and on, 40 before data.
/// </summary>
public sealed class DisplayWorkerTests : IAsyncDisposable
{
    private readonly FakeTimeProvider _time = new();
    private readonly FakePanel _panel = new();
    private readonly TurnFeed _feed = new();
    private readonly LineLog _log = new();
    private DisplayWorker? _worker;
    private Task _running = Task.CompletedTask;

    public async ValueTask DisposeAsync()
    {
        _feed.Complete();
        await _running;
        _worker?.Dispose();
    }

    [Theory]
    [InlineData(64, 0x3F, 0x12, 7)]
    [InlineData(32, 0x1F, 0x02, 3)]
    public async Task FirstPicture_SetsThePanelUpForItsHeight_AndSendsEveryPage(
        int height, int ratio, int pins, int lastPage)
    {
        await ShowAsync(height, SomeTurn.At(100));
        Assert.Contains(_panel.Writes, bytes => bytes.AsSpan().SequenceEqual((byte[])[0x00, 0xA8, (byte)ratio]));
        Assert.Equal(ratio + 1, _panel.Rows);
        Assert.Equal(pins, _panel.ComPins);
        var sent = _panel.Writes.TakeLast((height / 8) + 2).ToList();
        Assert.Equal((byte[])[0x00, 0x21, 0, 127], sent[0]);
        Assert.Equal((byte[])[0x00, 0x22, 0, (byte)lastPage], sent[1]);
        Assert.All(sent.Skip(2), bytes => Assert.Equal((129, 0x40), (bytes.Length, bytes[0])));
    }

    [Fact]
    public async Task BytesOnTheBus_AreTheCanvasByteByByte()
    {
        await ShowAsync(64, SomeTurn.At(100));
        var canvas = new Canvas(64);
        Face.Draw(canvas, SomeTurn.At(100).Picture);
        Assert.Equal(canvas.Bytes.ToArray(), _panel.Writes.TakeLast(8).SelectMany(bytes => bytes.Skip(1)).ToArray());
        Assert.Contains('#', _panel.Picture());
    }

    [Fact]
    public async Task SamePicture_IsNotSentAgain_AndIsAfterAMinute()
    {
        await ShowAsync(64, SomeTurn.At(100));
        var count = _panel.Writes.Count;
        await NextAsync(SomeTurn.At(102));
        Assert.Equal(count, _panel.Writes.Count);
        _time.Advance(DisplayWorker.RefreshEvery);
        await NextAsync(SomeTurn.At(104));
        Assert.True(_panel.Writes.Count > count, "a panel that lost its supply for a moment would stay dark");
    }

    [Fact]
    public async Task Unplugged_IsSaidOnce_AndBack_ItIsSetUpAndDrawnAnew()
    {
        await ShowAsync(64, SomeTurn.At(100));
        var before = _panel.Picture();
        _panel.IsPlugged = false;
        for (var i = 0; i < 20; i++)
        {
            await NextAsync(SomeTurn.At(200 + i, showerMinutes: 6 + i));
            _time.Advance(TimeSpan.FromSeconds(10));
        }

        Assert.Single(_log.Lines, line => line.Contains("display", StringComparison.Ordinal) && line.Contains(
            "121", StringComparison.Ordinal));
        _panel.IsPlugged = true;
        _panel.Writes.Clear();
        _time.Advance(TimeSpan.FromMinutes(1.1));
        await NextAsync(SomeTurn.At(300, showerMinutes: 8));
        Assert.Contains(_panel.Writes, bytes => bytes.AsSpan().SequenceEqual((byte[])[0x00, 0xA8, 0x3F]));
        Assert.True(_panel.IsLit);
        Assert.NotEqual(before, _panel.Picture());
    }

    [Fact]
    public async Task NoPanelAtAll_CostsNothingButALine()
    {
        _panel.IsPlugged = false;
        await ShowAsync(32, SomeTurn.At(100));
        for (var i = 0; i < 60; i++)
        {
            _time.Advance(TimeSpan.FromSeconds(10));
            await NextAsync(SomeTurn.At(110 + i));
        }

        Assert.Single(_log.Lines, line => line.Contains("display", StringComparison.Ordinal));
        // Doubling from a second to a minute makes about fifteen tries in ten minutes.
        Assert.InRange(_panel.Opened, 5, 25);
    }

    [Fact]
    public async Task EngineOff_WithTheOption_IsDark_UntilAnAlarmSounds()
    {
        var parked = SomeTurn.At(100, engineRuns: false);
        await ShowAsync(64, parked, isParkedOn: false);
        Assert.False(_panel.IsLit);
        await NextAsync(SomeTurn.At(102, engineRuns: false, alarms: SomeTurn.Alarm(AlarmKind.CoolantLoss)));
        Assert.True(_panel.IsLit);
        Assert.Equal(OledPanel.DayContrast, _panel.Contrast);
        await NextAsync(SomeTurn.At(104, engineRuns: true));
        Assert.True(_panel.IsLit);
    }

    [Fact]
    public async Task Night_IsDimmed_ByTheLocalClock()
    {
        // The clock of the fake is in UTC: 16:00 is day, 23:00 is night.
        await ShowAsync(64, SomeTurn.At(100));
        Assert.Equal(OledPanel.DayContrast, _panel.Contrast);
        await NextAsync(SomeTurn.At(7 * 3600));
        Assert.Equal(OledPanel.NightContrast, _panel.Contrast);
    }

    [Fact]
    public async Task Stopping_LeavesItDark()
    {
        await ShowAsync(64, SomeTurn.At(100));
        _worker!.Dispose();
        Assert.False(_panel.IsLit);
    }

    private async Task ShowAsync(int height, Turn turn, bool isParkedOn = true)
    {
        var options = new OutputOptions { DisplayHeight = height, DisplayParked = isParkedOn };
        _worker = new DisplayWorker(
            options, _panel.Open, _feed.Subscribe("display", DisplayWorker.QueueCapacity), _time, _log);
        _running = _worker.RunAsync(CancellationToken.None);
        await NextAsync(turn);
    }

    /// <summary>Publishes a turn and waits until the worker has shown it, or found that it cannot.</summary>
    private async Task NextAsync(Turn turn)
    {
        var taken = _worker!.Shown;
        _feed.Publish(turn);
        await Until.HoldsAsync(() => _worker.Shown > taken, "the turn was taken");
    }
}
