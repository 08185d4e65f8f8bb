using OnboardHeat.Limits;

namespace OnboardHeat.Adapters.Tests.History;

/// <summary>Short forms of the trials in tests/limits; each prints its figures with the seed.</summary>
public sealed class RecordTrialTests
{
    [Fact]
    public void PowerCutsAtAnyMoment_LoseNothingAcknowledgedAndRaiseNoFalseDamage() =>
        Assert.Equal(0, PowerCuts.Run(seed: 41, cases: 200));

    [Fact]
    public void DamagedFiles_AreReadExactlyOrTold() => Assert.Equal(0, Mutilations.Run(seed: 42, cases: 15));

    [Fact]
    public async Task AnyOperationFailing_LeavesNoHoleOnceTheCardIsWell() =>
        Assert.Equal(0, await FailingWrites.RunAsync(seed: 43, step: 41));
}
