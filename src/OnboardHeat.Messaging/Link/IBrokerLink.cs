using System.Threading.Channels;
using OnboardHeat.Messaging.Actions;
using OnboardHeat.Messaging.Topics;

namespace OnboardHeat.Messaging.Link;

/// <summary>
/// One connection to a broker, from connecting to its end; a new one is made for each try. Every member ends within its
/// own time limit with a <see cref="BrokerException"/>, or with the caller's cancellation.
/// </summary>
internal interface IBrokerLink : IAsyncDisposable
{
    /// <summary>Completes with the reason when the connection is gone.</summary>
    Task<string> Lost { get; }

    /// <summary>What came in on the subscribed topics; bounded, a flood is thrown away.</summary>
    ChannelReader<Question> Questions { get; }

    Task ConnectAsync(CancellationToken cancellationToken);

    Task SubscribeAsync(string filter, CancellationToken cancellationToken);

    /// <summary>Sends one message; where it is to be acknowledged, returns when it was.</summary>
    Task SendAsync(OutgoingMessage message, CancellationToken cancellationToken);

    /// <summary>Leaves in good order: the broker then does not speak the will.</summary>
    Task DisconnectAsync(CancellationToken cancellationToken);
}
