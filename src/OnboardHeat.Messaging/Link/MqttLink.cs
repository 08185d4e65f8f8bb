using System.Buffers;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using System.Threading.Channels;
using MQTTnet;
using MQTTnet.Formatter;
using MQTTnet.Packets;
using MQTTnet.Protocol;
using OnboardHeat.Messaging.Actions;
using OnboardHeat.Messaging.Topics;

namespace OnboardHeat.Messaging.Link;

/// <summary>
/// A connection over MQTTnet. The library is not trusted with time: its limits run on the wall clock and its events may
/// not come, so every await here has a limit of its own on the monotonic clock, and the connection's state is asked
/// for, not only listened to.
/// </summary>
internal sealed class MqttLink : IBrokerLink
{
    private readonly LinkSettings _settings;
    private readonly TimeProvider _time;
    private readonly IMqttClient _client = new MqttClientFactory().CreateMqttClient(new LimitedAdapters());
    private readonly TaskCompletionSource<string> _lost = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly Channel<Question> _questions = Channel.CreateBounded<Question>(
        new BoundedChannelOptions(LinkLimits.MaxQuestions)
        {
            FullMode = BoundedChannelFullMode.DropWrite,
            SingleReader = true,
        });

    public MqttLink(LinkSettings settings, TimeProvider time)
    {
        _settings = settings;
        _time = time;
        _client.DisconnectedAsync += OnDisconnectedAsync;
        _client.ApplicationMessageReceivedAsync += OnReceivedAsync;
    }

    public Task<string> Lost => _lost.Task;

    public ChannelReader<Question> Questions => _questions.Reader;

    public async Task ConnectAsync(CancellationToken cancellationToken)
    {
        var result = await WithinAsync(
            token => _client.ConnectAsync(Options(), token), LinkLimits.Answer, cancellationToken);
        if (result is not { ResultCode: MqttClientConnectResultCode.Success })
        {
            throw new BrokerException(
                Reasons.Of(result?.ResultCode ?? MqttClientConnectResultCode.UnspecifiedError, result?.ReasonString));
        }

        // Seen to happen (library issue 2198): no exception, a result that reads well, and no connection.
        if (!_client.IsConnected)
        {
            throw new BrokerException(_lost.Task.IsCompleted ? await _lost.Task : "gone as soon as it had answered");
        }
    }

    public async Task SubscribeAsync(string filter, CancellationToken cancellationToken)
    {
        var options = new MqttClientSubscribeOptions
        {
            TopicFilters =
            [
                new MqttTopicFilter
                {
                    Topic = filter,
                    QualityOfServiceLevel = MqttQualityOfServiceLevel.AtLeastOnce,
                    NoLocal = true,
                    // What the broker had kept is neither asked for nor, sent as it was published, ever taken for new.
                    RetainHandling = MqttRetainHandling.DoNotSendOnSubscribe,
                    RetainAsPublished = true,
                },
            ],
        };
        var result = await WithinAsync(
            token => _client.SubscribeAsync(options, token), LinkLimits.Answer, cancellationToken);
        var code = result.Items.First().ResultCode;
        if (code > MqttClientSubscribeResultCode.GrantedQoS2)
        {
            throw new BrokerException($"refuses the subscription to {filter}: {code}");
        }
    }

    public async Task SendAsync(OutgoingMessage message, CancellationToken cancellationToken)
    {
        var result = await WithinAsync(
            token => _client.PublishAsync(Packet(message), token), LinkLimits.Answer, cancellationToken);
        // NoMatchingSubscribers is a success: nobody listens just now.
        if (!result.IsSuccess)
        {
            throw new BrokerException($"refuses {message.Topic}: {result.ReasonCode}");
        }

        if (!_client.IsConnected)
        {
            throw new BrokerException(_lost.Task.IsCompleted ? await _lost.Task : "gone");
        }
    }

    public Task DisconnectAsync(CancellationToken cancellationToken) => WithinAsync(
        async token =>
        {
            await _client.DisconnectAsync(new MqttClientDisconnectOptions(), token);
            return true;
        },
        LinkLimits.Goodbye,
        cancellationToken);

    public ValueTask DisposeAsync()
    {
        _client.DisconnectedAsync -= OnDisconnectedAsync;
        _client.ApplicationMessageReceivedAsync -= OnReceivedAsync;
        _client.Dispose();
        return ValueTask.CompletedTask;
    }

    private async Task<T> WithinAsync<T>(
        Func<CancellationToken, Task<T>> act, TimeSpan limit, CancellationToken cancellationToken)
    {
        using var timeout = new CancellationTokenSource(limit, _time);
        using var both = CancellationTokenSource.CreateLinkedTokenSource(timeout.Token, cancellationToken);
        try
        {
            // The second wait is for a library that does not heed its token: it is left behind, and the client thrown
            // away with it.
            var task = act(both.Token);
            _ = task.ContinueWith(
                left => left.Exception, CancellationToken.None, TaskContinuationOptions.OnlyOnFaulted,
                TaskScheduler.Default);
            return await task.WaitAsync(both.Token);
        }
        catch (Exception e) when (e is not BrokerException)
        {
            cancellationToken.ThrowIfCancellationRequested();
            throw new BrokerException(timeout.IsCancellationRequested ? Reasons.NoAnswer : Reasons.Of(e));
        }
    }

    private MqttClientOptions Options()
    {
        var builder = new MqttClientOptionsBuilder()
            .WithTcpServer(_settings.Host, _settings.Port)
            .WithProtocolVersion(MqttProtocolVersion.V500)
            .WithClientId(_settings.ClientId)
            .WithTimeout(LinkLimits.Answer)
            .WithKeepAlivePeriod(LinkLimits.KeepAlive)
            // The session outlives a short loss, or a new connection would end it and with it speak the will.
            .WithCleanStart(false)
            .WithSessionExpiryInterval((uint)LinkLimits.SessionExpiry.TotalSeconds)
            .WithMaximumPacketSize(LinkLimits.MaxPacketBytes)
            .WithWillTopic(_settings.AliveTopic)
            .WithWillPayload("no"u8.ToArray())
            .WithWillContentType(OutgoingMessage.PlainText)
            .WithWillPayloadFormatIndicator(MqttPayloadFormatIndicator.CharacterData)
            .WithWillQualityOfServiceLevel(MqttQualityOfServiceLevel.AtLeastOnce)
            .WithWillRetain()
            .WithWillDelayInterval((uint)LinkLimits.WillDelay.TotalSeconds);
        if (_settings.UserName is { } user)
        {
            builder.WithCredentials(user, Password());
        }

        if (_settings.IsEncrypted)
        {
            builder.WithTlsOptions(Tls);
        }

        return builder.Build();
    }

    private byte[] Password() => _settings.Password is { } made ? System.Text.Encoding.UTF8.GetBytes(made)
        : _settings.PasswordFile is { } path ? PasswordFile.Read(path)
        : [];

    private void Tls(MqttClientTlsOptionsBuilder tls)
    {
        tls.UseTls().WithTargetHost(_settings.Host);
        if (_settings.CaFile is not { } path)
        {
            return;
        }

        try
        {
            var trusted = new X509Certificate2Collection();
            trusted.ImportFromPemFile(path);
            // An own authority has nowhere to ask about revocation.
            tls.WithTrustChain(trusted).WithRevocationMode(X509RevocationMode.NoCheck);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or CryptographicException)
        {
            throw new BrokerException($"certificate file {path} cannot be read: {e.Message}");
        }
    }

    private static MqttApplicationMessage Packet(OutgoingMessage message) => new()
    {
        Topic = message.Topic,
        Payload = new ReadOnlySequence<byte>(message.Payload),
        ContentType = message.ContentType,
        PayloadFormatIndicator = MqttPayloadFormatIndicator.CharacterData,
        QualityOfServiceLevel =
            message.IsAcknowledged ? MqttQualityOfServiceLevel.AtLeastOnce : MqttQualityOfServiceLevel.AtMostOnce,
        Retain = message.IsRetained,
        MessageExpiryInterval = (uint)(message.Expiry?.TotalSeconds ?? 0),
        CorrelationData = message.CorrelationData,
    };

    private Task OnDisconnectedAsync(MqttClientDisconnectedEventArgs e)
    {
        var reason = e.Exception is { } exception ? Reasons.Of(exception)
            : e.Reason == MqttClientDisconnectReason.NormalDisconnection ? "connection closed"
            : $"connection closed: {e.Reason}";
        _lost.TrySetResult(reason);
        return Task.CompletedTask;
    }

    private Task OnReceivedAsync(MqttApplicationMessageReceivedEventArgs e)
    {
        var message = e.ApplicationMessage;
        // One byte too many is enough to see that it is too long.
        var payload =
            message.Payload.Slice(0, Math.Min(message.Payload.Length, ActionDoor.MaxPayloadBytes + 1)).ToArray();
        _questions.Writer.TryWrite(
            new Question(message.Topic, payload, message.Retain, message.ResponseTopic, message.CorrelationData));
        return Task.CompletedTask;
    }
}
