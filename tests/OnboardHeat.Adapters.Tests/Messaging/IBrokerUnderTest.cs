using OnboardHeat.Engine.Options;

namespace OnboardHeat.Adapters.Tests.Messaging;

/// <summary>A broker that the same claims are made of: mosquitto as a process, or the one inside the daemon.</summary>
public interface IBrokerUnderTest : IAsyncDisposable
{
    /// <summary>Options with which the daemon finds it.</summary>
    MessagingOptions Options { get; }

    /// <summary>Port at which an outside client finds it once the daemon runs.</summary>
    int Port { get; }
}
