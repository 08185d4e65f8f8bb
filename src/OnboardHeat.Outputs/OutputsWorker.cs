using System.Device.Gpio;
using System.Threading.Channels;
using Microsoft.Extensions.Logging;
using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Watch;
using OnboardHeat.Engine;
using OnboardHeat.Engine.Options;
using OnboardHeat.Engine.Ports;
using OnboardHeat.Outputs.Pins;
using OnboardHeat.Outputs.Sounding;

namespace OnboardHeat.Outputs;

/// <summary>Buzzer, lamp and button. It sleeps until the next edge of a rhythm, a turn or a press; nothing it drives can hurt anybody else.</summary>
public sealed class OutputsWorker : IDisposable
{
    /// <summary>Turns that may wait: only the newest is shown.</summary>
    public const int QueueCapacity = 4;

    /// <summary>How long lamp and buzzer are tested: long enough to look up and listen.</summary>
    public static readonly TimeSpan TestLasts = TimeSpan.FromSeconds(3);

    private readonly TurnQueue _turns;
    private readonly IActionInbox _inbox;
    private readonly TimeProvider _time;
    private readonly ILogger _log;
    private readonly SoundingRules _rules;
    private readonly OutputPin? _buzzer;
    private readonly OutputPin? _lamp;
    private readonly ButtonPin? _button;
    private readonly PressJudge _press = new();
    private readonly Channel<bool> _edges = System.Threading.Channels.Channel.CreateBounded<bool>(
        new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropWrite });
    private readonly long _start;
    private Rhythm _tone = new(Pattern.Off, TimeSpan.Zero);
    private Rhythm _light = new(Pattern.Off, TimeSpan.Zero);
    private TimeSpan _testUntil;

    /// <summary>A worker for one run; <paramref name="open"/> gives a controller of its own to each line.</summary>
    public OutputsWorker(
        OutputOptions options, Func<GpioController> open, TurnQueue turns, IActionInbox inbox, TimeProvider time, ILogger log)
    {
        ArgumentNullException.ThrowIfNull(options);
        ArgumentNullException.ThrowIfNull(time);
        (_turns, _inbox, _time, _log, _start) = (turns, inbox, time, log, time.GetTimestamp());
        _rules = new SoundingRules(options);
        _buzzer = options.BuzzerPin is { } buzzer ? new OutputPin("buzzer", buzzer, open, time, log) : null;
        _lamp = options.LampPin is { } lamp ? new OutputPin("lamp", lamp, open, time, log) : null;
        _button = options.ButtonPin is { } button ? new ButtonPin(button, open, _edges.Writer, time, log) : null;
    }

    private TimeSpan Now => _time.GetElapsedTime(_start);

    /// <summary>Whether the configuration asks for any of it.</summary>
    public static bool IsWanted(OutputOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        return options.BuzzerPin is not null || options.LampPin is not null || options.ButtonPin is not null;
    }

    /// <summary>Runs until asked to stop or the feed ends.</summary>
    public async Task RunAsync(CancellationToken stopping)
    {
        Task<bool>? turn = null;
        Task<bool>? edge = null;
        while (!stopping.IsCancellationRequested)
        {
            while (_turns.Reader.TryRead(out var newest))
            {
                Take(newest);
            }

            _edges.Reader.TryRead(out _);
            Look();
            var next = Drive();
            turn ??= _turns.Reader.WaitToReadAsync(stopping).AsTask();
            edge ??= _edges.Reader.WaitToReadAsync(stopping).AsTask();
            using var woken = CancellationTokenSource.CreateLinkedTokenSource(stopping);
            await Task.WhenAny(turn, edge, Task.Delay(next ?? Timeout.InfiniteTimeSpan, _time, woken.Token));
            await woken.CancelAsync();
            if (turn is { IsCompletedSuccessfully: true, Result: false })
            {
                return;
            }

            turn = turn.IsCompleted ? null : turn;
            edge = edge.IsCompleted ? null : edge;
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _buzzer?.Dispose();
        _lamp?.Dispose();
        _button?.Dispose();
    }

    private void Take(Turn turn)
    {
        var tone = _rules.Sounds(turn.Picture) switch
        {
            AlarmPriority.Critical => Pattern.CriticalTone,
            AlarmPriority.Warning => Pattern.WarningTone,
            _ => Pattern.Off,
        };
        var light = SoundingRules.Shows(turn.Picture) switch
        {
            LampSign.Critical => Pattern.CriticalLamp,
            LampSign.Warning => Pattern.WarningLamp,
            LampSign.Seen => Pattern.On,
            LampSign.Works => Pattern.WorksLamp,
            _ => Pattern.Off,
        };
        // A rhythm that goes on is not begun anew, or a scan every two seconds would make a warning sound without a pause.
        _tone = _tone.Pattern == tone ? _tone : new Rhythm(tone, Now);
        _light = _light.Pattern == light ? _light : new Rhythm(light, Now);
    }

    private void Look()
    {
        if (_button is null)
        {
            return;
        }

        switch (_press.Observe(_button.IsDown(), Now))
        {
            case Press.Short:
                _inbox.Offer(new PersonAction(ActionKind.Acknowledge, "", ""));
                break;
            case Press.Long:
                _testUntil = Now + TestLasts;
                _log.Tested();
                _inbox.Offer(new PersonAction(ActionKind.Note, "", "lamp and buzzer tested"));
                break;
            case Press.Stuck:
                _log.ButtonStuck();
                break;
        }
    }

    // Sets both lines; how long until the next of anything is due, null when only a turn or an edge is awaited.
    private TimeSpan? Drive()
    {
        var now = Now;
        var testLeft = _testUntil - now;
        var isTest = testLeft > TimeSpan.Zero;
        var tone = isTest ? new Rhythm(Pattern.CriticalTone, _testUntil - TestLasts) : _tone;
        var (isSounding, toneLeft) = tone.Pattern.At(now - tone.Since);
        var (isLit, lightLeft) = isTest ? (true, null) : _light.Pattern.At(now - _light.Since);
        _buzzer?.Set(isSounding);
        _lamp?.Set(isLit);
        TimeSpan?[] dues =
        [
            toneLeft, lightLeft, isTest ? testLeft : null, _button is null ? null : _press.NextLook(now),
            _buzzer?.RetryIn, _lamp?.RetryIn, _button?.RetryIn,
        ];
        var next = dues.Min();
        return next is { } due && due < s_least ? s_least : next;
    }

    // A due that rounding put at zero must not make the loop spin.
    private static readonly TimeSpan s_least = TimeSpan.FromMilliseconds(1);

    private readonly record struct Rhythm(Pattern Pattern, TimeSpan Since);
}
