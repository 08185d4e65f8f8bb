using Microsoft.Extensions.Logging;
using OnboardHeat.Core.Scans;
using OnboardHeat.Engine;
using OnboardHeat.Engine.Options;
using OnboardHeat.Engine.Pictures;
using OnboardHeat.Engine.Ports;
using OnboardHeat.Messaging.Actions;
using OnboardHeat.Messaging.Broker;
using OnboardHeat.Messaging.Link;
using OnboardHeat.Messaging.Record;
using OnboardHeat.Messaging.Supervision;
using OnboardHeat.Messaging.Topics;

namespace OnboardHeat.Messaging;

/// <summary>
/// Publishes the van's hot water over MQTT, to a broker of the owner's or to the one inside. Runs until asked to stop.
/// </summary>
public sealed class MessagingWorker : IAsyncDisposable
{
    /// <summary>Turns that may wait: only the newest is said, so a few are plenty.</summary>
    public const int QueueCapacity = 8;

    private readonly EmbeddedBroker? _broker;
    private readonly MessagingLoop _loop;

    /// <summary>A worker for one run.</summary>
    /// <param name="options">A host, or the embedded broker, is asked for: see <see cref="IsWanted"/>.</param>
    /// <param name="vanId">The van's id: the root of all topics.</param>
    /// <param name="fitted">What is fitted.</param>
    /// <param name="turns">Its queue of turns.</param>
    /// <param name="inbox">Takes what people ask for, where actions are accepted.</param>
    /// <param name="record">The record, handed on to an outside broker; null for none.</param>
    /// <param name="longestScanPeriod">After three of these without a turn <c>alive</c> says no.</param>
    /// <param name="time">The clock.</param>
    /// <param name="log">Its log.</param>
    public MessagingWorker(
        MessagingOptions options, string vanId, FittedSet fitted, TurnQueue turns, IActionInbox inbox,
        IRecordQueue? record,
        TimeSpan longestScanPeriod, TimeProvider time, ILogger log)
    {
        ArgumentNullException.ThrowIfNull(options);
        var topics = new TopicTree(vanId);
        _broker = options.EmbeddedBroker ? new EmbeddedBroker(options.Port, topics) : null;
        var settings = SettingsOf(options, vanId, topics);
        var moments = new Moments(time);
        var parts = new SessionParts
        {
            Topics = topics,
            Announcer = new Announcer(topics, new PictureJson(vanId, fitted), fitted),
            Turns = turns,
            Door = options.AcceptActions ? new ActionDoor(topics, moments, inbox, time) : null,
            Moments = moments,
            Forwarder = record is null || options.EmbeddedBroker ? null : new RecordForwarder(
                record, topics, $"mqtt {settings.Name}", time),
            SilenceLimit = longestScanPeriod * Announcing.ScanPeriodsToSilence,
            Time = time,
            Log = log,
        };
        var name = options.EmbeddedBroker ? $"inside, port {options.Port}" : settings.Name;
        // The seed has to differ from van to van and start to start, and nothing hangs on its being guessed.
        var random = new Random(HashCode.Combine(vanId, time.GetUtcNow().Ticks));
        _loop = new MessagingLoop(
            parts, Connecting(settings, time), new Outage(name, topics.Root, time, log), new Backoff(random));
    }

    /// <summary>Whether the configuration asks for publishing at all.</summary>
    public static bool IsWanted(MessagingOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        return options.Host is not null || options.EmbeddedBroker;
    }

    /// <summary>Port of the embedded broker once it has started.</summary>
    internal int EmbeddedPort => _broker?.Port ?? throw new InvalidOperationException("There is no embedded broker.");

    /// <summary>Runs until asked to stop or the feed ends; a broker that is not to be had is no end.</summary>
    public Task RunAsync(CancellationToken stopping) => _loop.RunAsync(stopping);

    /// <summary>Stops the embedded broker.</summary>
    public ValueTask DisposeAsync() => _broker?.DisposeAsync() ?? ValueTask.CompletedTask;

    private Func<CancellationToken, Task<IBrokerLink>> Connecting(
        LinkSettings settings, TimeProvider time) => async _ =>
    {
        if (_broker is null)
        {
            return new MqttLink(settings, time);
        }

        await _broker.EnsureStartedAsync();
        return new MqttLink(settings with { Port = _broker.Port }, time);
    };

    private LinkSettings SettingsOf(MessagingOptions options, string vanId, TopicTree topics) => _broker is null
        ? new LinkSettings
        {
            Host = options.Host ?? throw new ArgumentException("No host is given.", nameof(options)),
            Port = options.Port,
            ClientId = $"onboardheat-{vanId}",
            AliveTopic = topics.Alive,
            UserName = options.UserName,
            PasswordFile = options.PasswordFile,
            IsEncrypted = options.Tls,
            CaFile = options.CaFile,
        }
        : new LinkSettings
        {
            Host = "127.0.0.1",
            Port = options.Port,
            ClientId = _broker.OwnClientId,
            AliveTopic = topics.Alive,
            UserName = _broker.OwnClientId,
            Password = _broker.OwnPassword,
        };
}
