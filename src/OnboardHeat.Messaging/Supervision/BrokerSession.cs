using OnboardHeat.Messaging.Actions;
using OnboardHeat.Messaging.Link;
using OnboardHeat.Messaging.Topics;

namespace OnboardHeat.Messaging.Supervision;

/// <summary>
/// One connection from hello to goodbye. It says what is due after each turn, answers what people ask, and looks around
/// once a second: is anybody judging, was the clock set, is the link still there.
/// </summary>
internal sealed class BrokerSession(SessionParts parts, IBrokerLink link, NewestTurn newest)
{
    private static readonly TimeSpan s_look = TimeSpan.FromSeconds(1);

    private readonly ClockStep _clock = new(parts.Time);
    private readonly long _start = parts.Time.GetTimestamp();
    private Task<bool>? _moreQuestions;
    private TimeSpan? _aliveAt;
    private TimeSpan? _momentAt;
    private bool _saidAlive;

    /// <summary>How long the connection has held; zero until it came about.</summary>
    public TimeSpan HeldFor { get; private set; }

    /// <summary>
    /// Runs until the link fails (<see cref="BrokerException"/>), the clock was set (returns false), or the daemon
    /// stops (returns true).
    /// </summary>
    public async Task<bool> RunAsync(Action whenConnected, CancellationToken stopping)
    {
        await link.ConnectAsync(stopping);
        if (parts.Door is not null)
        {
            await link.SubscribeAsync(parts.Topics.ActionFilter, stopping);
        }

        whenConnected();
        parts.Announcer.StartAnew();
        using var ending = CancellationTokenSource.CreateLinkedTokenSource(stopping);
        var forwarding = parts.Forwarder?.RunAsync(link, ending.Token) ?? new TaskCompletionSource().Task;
        try
        {
            return await SpeakAsync(forwarding, stopping);
        }
        catch (OperationCanceledException) when (stopping.IsCancellationRequested)
        {
            await SayGoodbyeAsync();
            return true;
        }
        finally
        {
            HeldFor = Now;
            await ending.CancelAsync();
            if (parts.Forwarder is not null)
            {
                await forwarding.ContinueWith(
                    _ => { }, CancellationToken.None, TaskContinuationOptions.None, TaskScheduler.Default);
            }
        }
    }

    private TimeSpan Now => parts.Time.GetElapsedTime(_start);

    private async Task<bool> SpeakAsync(Task forwarding, CancellationToken stopping)
    {
        var isNew = true;
        while (true)
        {
            stopping.ThrowIfCancellationRequested();
            isNew |= newest.Take();
            await SayAliveAsync(stopping);
            if (isNew && newest.Turn is { } turn)
            {
                foreach (var message in parts.Announcer.After(turn, Now))
                {
                    await link.SendAsync(message, stopping);
                }
            }

            await SayMomentAsync(stopping);
            await AnswerAsync(stopping);
            if (newest.HasEnded)
            {
                await SayGoodbyeAsync();
                return true;
            }

            await WaitAsync(forwarding, stopping);
            if (_clock.Look() is var step && step != TimeSpan.Zero)
            {
                parts.Log.ClockWasSet(parts.Topics.Root, step.TotalSeconds);
                return false;
            }

            isNew = false;
        }
    }

    private async Task WaitAsync(Task forwarding, CancellationToken stopping)
    {
        using var woken = CancellationTokenSource.CreateLinkedTokenSource(stopping);
        var look = Task.Delay(s_look, parts.Time, woken.Token);
        _moreQuestions ??= link.Questions.WaitToReadAsync(stopping).AsTask();
        await Task.WhenAny(newest.MoreAsync(), _moreQuestions, link.Lost, forwarding, look);
        await woken.CancelAsync();
        if (link.Lost.IsCompleted)
        {
            throw new BrokerException(await link.Lost);
        }

        if (forwarding.IsFaulted)
        {
            await forwarding;
        }

        if (_moreQuestions.IsCompleted)
        {
            _moreQuestions = null;
        }
    }

    // "Yes" expires at the broker unless renewed, so that a power cut does not leave it standing; "no" stays.
    private async Task SayAliveAsync(CancellationToken cancellationToken)
    {
        var isAlive = newest.Turn is not null && newest.Age < parts.SilenceLimit;
        if (_aliveAt is { } at && isAlive == _saidAlive && Now - at < Announcing.ValuePeriod)
        {
            return;
        }

        _saidAlive = isAlive;
        _aliveAt = Now;
        await link.SendAsync(Alive(isAlive), cancellationToken);
    }

    private OutgoingMessage Alive(bool isAlive) => new()
    {
        Topic = parts.Topics.Alive,
        Payload = isAlive ? "yes"u8.ToArray() : "no"u8.ToArray(),
        IsAcknowledged = true,
        Expiry = isAlive ? Announcing.ValuePeriod * Announcing.PeriodsToExpiry : null,
    };

    private async Task SayMomentAsync(CancellationToken cancellationToken)
    {
        if (parts.Door is null || (_momentAt is { } at && Now - at < Announcing.MomentPeriod))
        {
            return;
        }

        _momentAt = Now;
        await link.SendAsync(
            new OutgoingMessage
            {
                Topic = parts.Topics.Moment,
                Payload = System.Text.Encoding.UTF8.GetBytes(parts.Moments.Now()),
                Expiry = Moments.Limit,
            },
            cancellationToken);
    }

    private async Task AnswerAsync(CancellationToken cancellationToken)
    {
        while (link.Questions.TryRead(out var question))
        {
            if (parts.Door is null)
            {
                continue;
            }

            var (answer, message) = parts.Door.Take(question, newest.Turn?.Picture);
            var action = parts.Topics.ActionOf(question.Topic) is { } kind
                ? Core.Scans.PersonAction.NameOf(kind) : "(none)";
            parts.Log.Asked(action, Printable(answer.Id), answer.Result, answer.Why);
            if (message is not null)
            {
                await link.SendAsync(message, cancellationToken);
            }
        }
    }

    // A stranger's id must not be able to write lines of its own into the log.
    private static string Printable(string id) => new([.. id.Select(c => char.IsControl(c) ? '?' : c)]);

    private async Task SayGoodbyeAsync()
    {
        using var limit = new CancellationTokenSource(LinkLimits.Goodbye, parts.Time);
        try
        {
            await link.SendAsync(Alive(false), limit.Token);
            await link.DisconnectAsync(limit.Token);
        }
        catch (Exception e) when (e is BrokerException or OperationCanceledException)
        {
            // Nobody is there to say goodbye to; the will says it for us.
        }
    }
}
