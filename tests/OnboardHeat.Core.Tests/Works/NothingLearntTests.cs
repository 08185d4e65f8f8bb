using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Tests.Circuit;

namespace OnboardHeat.Core.Tests.Works;

public sealed class NothingLearntTests
{
    [Fact]
    public void StopDuringWorks_TeachesNothingOfTheLines_AndTheSameStopOtherwiseDoes()
    {
        Assert.NotNull(AfterAStop(isInWorks: false).FlowDecayPerS);
        Assert.Null(AfterAStop(isInWorks: true).FlowDecayPerS);
    }

    private static Core.Circuit.LearntCircuit AfterAStop(bool isInWorks)
    {
        var bench = new CircuitBench().WarmedUp();
        if (isInWorks)
        {
            bench.Bench.Do(ActionKind.WorksBegin);
            bench.Run(10);
        }

        (bench.IsEngineOn, bench.IsCirculating) = (false, false);
        return bench.Run(900).Bench.Monitor.Keep().Learnt.Circuit;
    }
}
