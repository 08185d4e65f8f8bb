namespace OnboardHeat.Adapters.Tests.Messaging;

/// <summary>The contract over the broker inside the daemon, and what only that one promises.</summary>
public sealed class EmbeddedBrokerTests : BrokerContract
{
    protected override Task<IBrokerUnderTest> StartBrokerAsync() =>
        Task.FromResult<IBrokerUnderTest>(new InsideBroker());
}
