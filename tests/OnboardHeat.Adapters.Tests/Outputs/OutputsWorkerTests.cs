using Microsoft.Extensions.Time.Testing;
using OnboardHeat.Adapters.Tests.Messaging;
using OnboardHeat.Adapters.Tests.Support;
using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Watch;
using OnboardHeat.Core.Works;
using OnboardHeat.Engine;
using OnboardHeat.Engine.Judging;
using OnboardHeat.Engine.Options;
using OnboardHeat.Engine.Ports;
using OnboardHeat.Outputs;
using OnboardHeat.Outputs.Pins;

namespace OnboardHeat.Adapters.Tests.Outputs;

/// <summary>Buzzer, lamp and button through the real GpioController over a fake driver, by fake time.</summary>
public sealed class OutputsWorkerTests : IDisposable
{
    private const int Buzzer = 22;
    private const int Lamp = 23;
    private const int Heartbeat = 24;
    private const int Button = 25;

    private readonly FakeTimeProvider _time = new();
    private readonly FakeBoard _board = new();
    private readonly TurnFeed _feed = new();
    private readonly ActionInbox _inbox = new();
    private readonly LineLog _log = new();
    private readonly CancellationTokenSource _stopping = new();
    private OutputsWorker? _worker;
    private Task _running = Task.CompletedTask;

    public void Dispose()
    {
        _stopping.Cancel();
        _running.GetAwaiter().GetResult();
        _worker?.Dispose();
        _stopping.Dispose();
    }

    [Fact]
    public async Task CoolantLoss_SoundsThreeTonesAndBlinksFast()
    {
        Start();
        _feed.Publish(SomeTurn.At(100, alarms: SomeTurn.Alarm(AlarmKind.CoolantLoss)));
        await Until.HoldsAsync(() => _board.Level(Buzzer), "the buzzer sounds");

        Assert.Equal("####...####...####......................", await PlayAsync(Buzzer, 40));
        Assert.Contains("#####.....#####.....", await PlayAsync(Lamp, 40));
    }

    [Fact]
    public async Task Warning_SoundsTwoTonesEachHalfMinute_WithTheEngineOn_AndNotWithItOff()
    {
        Start();
        _feed.Publish(SomeTurn.At(100, alarms: SomeTurn.Alarm(AlarmKind.CirculationStopped)));
        await Until.HoldsAsync(() => _board.Level(Buzzer), "the buzzer sounds");
        Assert.Equal("###...###..........", await PlayAsync(Buzzer, 19));
        await AdvanceAsync(TimeSpan.FromSeconds(25));
        Assert.Equal(2, Tones());
        await AdvanceAsync(TimeSpan.FromSeconds(8));
        Assert.Equal(4, Tones());

        _feed.Publish(SomeTurn.At(140, engineRuns: false, alarms: SomeTurn.Alarm(AlarmKind.CirculationStopped)));
        await AdvanceAsync(TimeSpan.FromMinutes(2));
        Assert.Equal(4, Tones());
        Assert.False(_board.Level(Buzzer));
    }

    [Fact]
    public async Task Advice_NeverSoundsNorLights()
    {
        Start();
        _feed.Publish(SomeTurn.At(100, alarms: SomeTurn.Alarm(AlarmKind.TestDue)));
        await AdvanceAsync(TimeSpan.FromMinutes(2));
        Assert.DoesNotContain(_board.Written, written => written.Level);
    }

    [Fact]
    public async Task Acknowledged_TheBuzzerIsSilentAndTheLampSteady()
    {
        Start();
        _feed.Publish(SomeTurn.At(100, alarms: SomeTurn.Alarm(AlarmKind.CoolantLoss)));
        await Until.HoldsAsync(() => _board.Level(Buzzer), "the buzzer sounds");

        _feed.Publish(SomeTurn.At(
            102,
            alarms: SomeTurn.Alarm(AlarmKind.CoolantLoss, AlarmState.Acknowledged) with { IsAcknowledged = true }));
        await Until.HoldsAsync(() => !_board.Level(Buzzer) && _board.Level(Lamp), "silent and lit");

        Assert.Equal(new string('.', 60), await PlayAsync(Buzzer, 60));
        Assert.Equal(new string('#', 60), await PlayAsync(Lamp, 60));
    }

    [Fact]
    public async Task ShortPress_Acknowledges_LongPress_TestsBoth()
    {
        Start();
        await PressAsync(TimeSpan.FromMilliseconds(300));
        await Until.HoldsAsync(
            () => !_inbox.TakeAll().All(a => a != new PersonAction(ActionKind.Acknowledge, "", "")),
            "an acknowledgement");

        _board.Drive(Button, false);
        await AdvanceAsync(TimeSpan.FromSeconds(3.1));
        await Until.HoldsAsync(
            () => _board.Level(Lamp) && _log.Lines.Contains("lamp and buzzer tested"), "the lamp is tested");
        Assert.Contains((Buzzer, true), _board.Written);
        _board.Drive(Button, true);
        await AdvanceAsync(TimeSpan.FromSeconds(3.2));

        await Until.HoldsAsync(() => !_board.Level(Lamp) && !_board.Level(Buzzer), "the test is over");
        Assert.Equal([new PersonAction(ActionKind.Test, "", "by button")], _inbox.TakeAll());
    }

    [Fact]
    public async Task TwoShortAndALongPress_SayThatTheTankWasDrained_AndAreAnsweredAudibly()
    {
        Start();
        _feed.Publish(SomeTurn.At(100));
        await PressAsync(TimeSpan.FromMilliseconds(300));
        await PressAsync(TimeSpan.FromMilliseconds(300));
        _board.Drive(Button, false);
        await AdvanceAsync(TimeSpan.FromSeconds(3.1));
        await Until.HoldsAsync(() => _log.Lines.Contains("drained by button"), "the order is taken");

        Assert.Equal(
            [new PersonAction(ActionKind.Acknowledge, "", ""), new PersonAction(ActionKind.Drained, "", "by button")],
            _inbox.TakeAll());
        Assert.Contains((Buzzer, true), _board.Written);
    }

    [Fact]
    public async Task ThreeShortAndALongPress_EndWorksThatAreUnderWay()
    {
        Start();
        _feed.Publish(SomeTurn.At(
            100) with { Picture = SomeTurn.At(100).Picture with { Works = new WorksReport { IsUnderWay = true } } });
        for (var i = 0; i < 3; i++)
        {
            await PressAsync(TimeSpan.FromMilliseconds(300));
        }

        _board.Drive(Button, false);
        await AdvanceAsync(TimeSpan.FromSeconds(3.1));
        await Until.HoldsAsync(() => _log.Lines.Contains("works-end by button"), "the order is taken");
        Assert.Contains(new PersonAction(ActionKind.WorksEnd, "", "by button"), _inbox.TakeAll());
    }

    [Fact]
    public async Task TestAskedForByCommand_LightsAndSounds()
    {
        Start();
        var turn = SomeTurn.At(100);
        turn.Scan.Actions = [new PersonAction(ActionKind.Test, "", "")];
        _feed.Publish(turn);
        await Until.HoldsAsync(() => _board.Level(Lamp) && _board.Level(Buzzer), "both are on");
        await AdvanceAsync(TimeSpan.FromSeconds(3.2));
        await Until.HoldsAsync(() => !_board.Level(Lamp) && !_board.Level(Buzzer), "the test is over");
        Assert.Single(_log.Lines, line => line == "lamp and buzzer tested");
        Assert.Empty(_inbox.TakeAll());
    }

    [Fact]
    public async Task LampPinNotToBeHad_IsSaidOnce_AndTheBuzzerSounds()
    {
        _board.Taken.Add(Lamp);
        Start();
        _feed.Publish(SomeTurn.At(100, alarms: SomeTurn.Alarm(AlarmKind.CoolantLoss)));
        await Until.HoldsAsync(() => _board.Written.Contains((Buzzer, true)), "the buzzer sounds all the same");
        await AdvanceAsync(TimeSpan.FromMinutes(5));
        Assert.Single(_log.Lines, line => line.Contains("lamp", StringComparison.Ordinal) && line.Contains(
            "in use", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Outputs_AreProvedByReadingBack_AndALineThatDoesNotFollowIsNamed()
    {
        Start();
        Assert.Empty(await _worker!.ProveAsync());
        Assert.Contains((Buzzer, true), _board.Written);
        Assert.False(_board.Level(Buzzer));

        _board.Shorted.Add(Lamp);
        Assert.Equal(["lamp: pin 23 does not follow"], await _worker.ProveAsync());
    }

    [Fact]
    public async Task BuzzerPinNotToBeHad_IsSaidOnce_TheLampGoesOn_AndItComesBack()
    {
        _board.Taken.Add(Buzzer);
        Start();
        _feed.Publish(SomeTurn.At(100, alarms: SomeTurn.Alarm(AlarmKind.CoolantLoss)));
        await Until.HoldsAsync(() => _board.Level(Lamp), "the lamp is lit all the same");

        await AdvanceAsync(TimeSpan.FromMinutes(10));
        // Doubling from a second to a minute: 1+2+4+8+16+32+60... reaches ten minutes in about 15 tries, never one a
        // tone.
        Assert.InRange(_board.Opened, 3, 40);
        Assert.Single(_log.Lines, line => line.Contains("buzzer", StringComparison.Ordinal) && line.Contains(
            "in use", StringComparison.Ordinal));

        _board.Taken.Clear();
        await AdvanceAsync(TimeSpan.FromMinutes(1.1));
        await Until.HoldsAsync(() => _board.Written.Contains((Buzzer, true)), "the buzzer is back");
    }

    [Fact]
    public async Task StuckButton_IsSaidOnce_AndAlarmsSoundOn()
    {
        Start();
        _board.Drive(Button, false);
        await AdvanceAsync(TimeSpan.FromMinutes(5));
        Assert.Single(_log.Lines, line => line.Contains("stuck", StringComparison.Ordinal));

        _feed.Publish(SomeTurn.At(400, alarms: SomeTurn.Alarm(AlarmKind.CoolantLoss)));

        await Until.HoldsAsync(() => _board.Level(Buzzer), "the buzzer sounds");
        Assert.DoesNotContain(_inbox.TakeAll(), action => action.Kind == ActionKind.Acknowledge);
    }

    [Fact]
    public void Heartbeat_TogglesWithTheFeedingOfTheWatchdog_AndNeverThrows()
    {
        using var pin = new HeartbeatPin(Heartbeat, _board.Open, _time, _log);
        var fed = new CountingNotifier();
        var notifier = new BeatingNotifier(fed, pin);

        notifier.FeedWatchdog();
        notifier.FeedWatchdog();
        notifier.FeedWatchdog();

        Assert.Equal([true, false, true], _board.Written.Where(w => w.Pin == Heartbeat).Select(w => w.Level));
        _board.Taken.Add(Heartbeat);
        notifier.FeedWatchdog();
        Assert.Equal(4, fed.Fed);
        Assert.Single(_log.Lines, line => line.Contains("heartbeat", StringComparison.Ordinal) && line.Contains(
            "in use", StringComparison.Ordinal));
    }

    [Fact]
    public void HeartbeatLineThatDoesNotFollow_IsNamed()
    {
        using var pin = new HeartbeatPin(Heartbeat, _board.Open, _time, _log);
        pin.Beat();
        Assert.Null(pin.Trouble);
        _board.Shorted.Add(Heartbeat);
        pin.Beat();
        pin.Beat();
        Assert.Equal("pin 24 does not follow", pin.Trouble);
    }

    private int Tones() => _board.Written.Count(written => written == (Buzzer, true));

    private void Start()
    {
        var options = new OutputOptions { BuzzerPin = Buzzer, LampPin = Lamp, ButtonPin = Button };
        _worker = new OutputsWorker(
            options, _board.Open, _feed.Subscribe("outputs", OutputsWorker.QueueCapacity), _inbox, _time, _log);
        _running = _worker.RunAsync(_stopping.Token);
    }

    private async Task PressAsync(TimeSpan span)
    {
        _board.Drive(Button, false);
        await AdvanceAsync(span);
        _board.Drive(Button, true);
        await AdvanceAsync(TimeSpan.FromMilliseconds(100));
    }

    // Small steps, and between them the worker may take its turn; no claim rests on how long that takes.
    private async Task AdvanceAsync(TimeSpan span)
    {
        var step = span > TimeSpan.FromSeconds(30) ? TimeSpan.FromSeconds(5) : TimeSpan.FromMilliseconds(50);
        for (var left = span; left > TimeSpan.Zero; left -= step)
        {
            _time.Advance(left < step ? left : step);
            await SettleAsync();
        }
    }

    private static async Task SettleAsync()
    {
        for (var i = 0; i < 2; i++)
        {
            await Task.Delay(TimeSpan.FromMilliseconds(1), TimeProvider.System);
        }
    }

    // What a line does in steps of 50 ms from now on: # on, . off.
    private async Task<string> PlayAsync(int pin, int steps)
    {
        var seen = new char[steps];
        for (var i = 0; i < steps; i++)
        {
            await SettleAsync();
            seen[i] = _board.Level(pin) ? '#' : '.';
            _time.Advance(TimeSpan.FromMilliseconds(50));
        }

        return new string(seen);
    }

    private sealed class CountingNotifier : IServiceNotifier
    {
        public int Fed { get; private set; }

        public void Ready()
        {
        }

        public void FeedWatchdog() => Fed++;

        public void Stopping()
        {
        }
    }
}
