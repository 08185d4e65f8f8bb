namespace OnboardHeat.Adapters.Tests.Messaging;

/// <summary>The contract over a broker that is not ours.</summary>
public sealed class MosquittoBrokerTests : BrokerContract
{
    protected override async Task<IBrokerUnderTest> StartBrokerAsync() => await Mosquitto.StartAsync();
}
