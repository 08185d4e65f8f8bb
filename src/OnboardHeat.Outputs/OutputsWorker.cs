using System.Device.Gpio;
using System.Threading.Channels;
using Microsoft.Extensions.Logging;
using OnboardHeat.Core;
using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Watch;
using OnboardHeat.Engine;
using OnboardHeat.Engine.Options;
using OnboardHeat.Engine.Ports;
using OnboardHeat.Outputs.Pins;
using OnboardHeat.Outputs.Sounding;

namespace OnboardHeat.Outputs;

/// <summary>
/// Buzzer, lamp and button. It sleeps until the next edge of a rhythm, a turn or a press; nothing it drives can hurt
/// anybody else.
/// </summary>
public sealed class OutputsWorker : IDisposable
{
    /// <summary>Turns that may wait: only the newest is shown.</summary>
    public const int QueueCapacity = 4;

    /// <summary>How long lamp and buzzer are tested: long enough to look up and listen.</summary>
    public static readonly TimeSpan TestLasts = TimeSpan.FromSeconds(3);

    // A due that rounding put at zero must not make the loop spin.
    private static readonly TimeSpan s_least = TimeSpan.FromMilliseconds(1);

    private readonly TurnQueue _turns;
    private readonly IActionInbox _inbox;
    private readonly TimeProvider _time;
    private readonly ILogger _log;
    private readonly SoundingRules _rules;
    private readonly OutputPin? _buzzer;
    private readonly OutputPin? _lamp;
    private readonly ButtonPin? _button;
    private readonly PressJudge _press = new();
    private readonly PressSequence _sequence = new();
    private readonly Channel<bool> _edges = System.Threading.Channels.Channel.CreateBounded<bool>(
        new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropWrite });
    private readonly long _start;
    private Rhythm _tone = new(Pattern.Off, TimeSpan.Zero);
    private Rhythm _light = new(Pattern.Off, TimeSpan.Zero);
    private Interlude _interlude;
    private Picture? _newest;
    private int _ownTests;
    private TaskCompletionSource<IReadOnlyList<string>>? _proof;

    /// <summary>A worker for one run; <paramref name="open"/> gives a controller of its own to each line.</summary>
    public OutputsWorker(
        OutputOptions options, Func<GpioController> open, TurnQueue turns, IActionInbox inbox, TimeProvider time,
        ILogger log)
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

    /// <summary>
    /// The most urgent priority that would sound for a picture, by the rules of this van; null: silence.
    /// </summary>
    public static AlarmPriority? WouldSound(OutputOptions options, Picture picture) =>
        new SoundingRules(options).Sounds(picture);

    /// <summary>
    /// Drives buzzer and lamp both ways and reads them back, too briefly to be heard. What is wrong, line by line;
    /// empty when nothing is. Done by the running worker.
    /// </summary>
    public Task<IReadOnlyList<string>> ProveAsync()
    {
        var proof = new TaskCompletionSource<IReadOnlyList<string>>(TaskCreationOptions.RunContinuationsAsynchronously);
        Volatile.Write(ref _proof, proof);
        _edges.Writer.TryWrite(true);
        return proof.Task;
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
            Interlocked.Exchange(ref _proof, null)?.SetResult(Prove());
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
        _newest = turn.Picture;
        var tone = Pattern.ToneOf(_rules.Sounds(turn.Picture));
        var light = Pattern.LightOf(SoundingRules.Shows(turn.Picture));
        // A rhythm that goes on is not begun anew, or a scan every two seconds would make a warning sound without a
        // pause.
        _tone = _tone.Pattern == tone ? _tone : new Rhythm(tone, Now);
        _light = _light.Pattern == light ? _light : new Rhythm(light, Now);
        foreach (var action in turn.Scan.Actions)
        {
            // The button's own test has begun already, at the press.
            if (action.Kind == ActionKind.Test && --_ownTests < 0)
            {
                _ownTests = 0;
                Test();
            }
        }
    }

    private void Look()
    {
        if (_button is null)
        {
            return;
        }

        switch (_sequence.After(_press.Observe(_button.IsDown(), Now), Now))
        {
            case ButtonOrder.Acknowledge:
                _inbox.Offer(new PersonAction(ActionKind.Acknowledge, "", ""));
                break;
            case ButtonOrder.Test:
                Test();
                _ownTests++;
                _inbox.Offer(new PersonAction(ActionKind.Test, "", "by button"));
                break;
            case ButtonOrder.Drained when _newest is { } picture:
                Order(picture.Tank.IsDrained ? ActionKind.Filled : ActionKind.Drained, 2, !picture.Tank.IsDrained);
                break;
            case ButtonOrder.Works when _newest is { } picture:
                Order(picture.IsInWorks ? ActionKind.WorksEnd : ActionKind.WorksBegin, 3, !picture.IsInWorks);
                break;
            case ButtonOrder.Stuck:
                _log.ButtonStuck();
                break;
        }
    }

    private void Test()
    {
        _interlude = new Interlude(Pattern.CriticalTone, Pattern.On, Now, Now + TestLasts);
        _log.Tested();
    }

    /// <summary>
    /// Answers in as many short tones as were pressed; a long one after them says that something has begun.
    /// </summary>
    private void Order(ActionKind kind, int presses, bool begins)
    {
        _inbox.Offer(new PersonAction(kind, "", "by button"));
        var answer = Pattern.Answer(presses, begins);
        _interlude = new Interlude(answer, answer, Now, Now + answer.Length);
        _log.Ordered(PersonAction.NameOf(kind));
    }

    private List<string> Prove()
    {
        var wrong = new List<string>();
        foreach (var pin in (OutputPin?[])[_buzzer, _lamp])
        {
            if (pin?.Prove() is { } why)
            {
                wrong.Add(why);
            }
        }

        return wrong;
    }

    // Sets both lines; how long until the next of anything is due, null when only a turn or an edge is awaited.
    private TimeSpan? Drive()
    {
        var now = Now;
        var left = _interlude.Until - now;
        var isApart = left > TimeSpan.Zero;
        var tone = isApart ? new Rhythm(_interlude.Tone, _interlude.Since) : _tone;
        var light = isApart ? new Rhythm(_interlude.Light, _interlude.Since) : _light;
        var (isSounding, toneLeft) = tone.Pattern.At(now - tone.Since);
        var (isLit, lightLeft) = light.Pattern.At(now - light.Since);
        _buzzer?.Set(isSounding);
        _lamp?.Set(isLit);
        TimeSpan?[] dues =
        [
            toneLeft, lightLeft, isApart ? left : null, _button is null ? null : _press.NextLook(now),
            _buzzer?.RetryIn, _lamp?.RetryIn, _button?.RetryIn,
        ];
        var next = dues.Min();
        return next is { } due && due < s_least ? s_least : next;
    }

    private readonly record struct Rhythm(Pattern Pattern, TimeSpan Since);
}
