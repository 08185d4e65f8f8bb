using Microsoft.Extensions.Time.Testing;
using OnboardHeat.Daemon.Probing;

namespace OnboardHeat.Daemon.Tests.Probing;

public sealed class ProbingSessionTests
{
    private readonly FakeTimeProvider _time = new() { AutoAdvanceAmount = TimeSpan.Zero };
    private readonly StringWriter _said = new();

    [Fact]
    public async Task PairHeldTogether_IsKeptForTheSecond()
    {
        var view = View(_ => SomeSight.Of(40, 39.8125));
        Assert.Equal(0, await RunAsync(Session(view).CompareAsync("flow", "return", default)));
        Assert.Equal(("return", 0.188), view.Kept);
        Assert.Contains("return reads 0.188 K below flow", _said.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task PairThatIsNotTogether_IsNotKept()
    {
        var view = View(_ => SomeSight.Of(40, 21));
        Assert.Equal(65, await RunAsync(Session(view).CompareAsync("flow", "return", default)));
        Assert.Null(view.Kept);
    }

    [Fact]
    public async Task PairThatNeverComesToRest_IsGivenUp()
    {
        var view = View(i => SomeSight.Of(40 + i, 40));
        Assert.Equal(65, await RunAsync(Session(view).CompareAsync("flow", "return", default)));
        Assert.Contains("do not come to rest", _said.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task OffsetThatCannotBeKept_IsSaid()
    {
        var view = View(_ => SomeSight.Of(40, 40), "the card is read-only");
        Assert.Equal(70, await RunAsync(Session(view).CompareAsync("flow", "return", default)));
        Assert.Contains("Not kept: the card is read-only", _said.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task WarmedProbes_AreNamedUntilNoneIsLeft()
    {
        var view = View(i => SomeSight.Of(i > 2 ? 25 : 20, i > 4 ? 25 : 20, i > 6 ? 25 : 20));
        Assert.Equal(0, await RunAsync(Session(view).NameWarmedAsync(default)));
        var lines = _said.ToString().Split('\n');
        Assert.StartsWith(SomeSight.Flow, lines[1], StringComparison.Ordinal);
        Assert.StartsWith(SomeSight.Return, lines[2], StringComparison.Ordinal);
        Assert.Contains("it is not configured", lines[3], StringComparison.Ordinal);
    }

    [Fact]
    public async Task NobodyWarmsAProbe_EndsAfterTwoMinutes()
    {
        var view = View(_ => SomeSight.Of(20, 20));
        Assert.Equal(65, await RunAsync(Session(view).NameWarmedAsync(default)));
        Assert.Contains("none has warmed by itself", _said.ToString(), StringComparison.Ordinal);
    }

    private ProbingSession Session(IBusView view) => new(view, _time, _said);

    private FakeBusView View(Func<int, BusSight> at, string? problem = null) =>
        new(at, () => _time.Advance(TimeSpan.FromSeconds(1))) { Problem = problem };

    /// <summary>Lets time pass until the session has ended.</summary>
    private async Task<int> RunAsync(Task<int> session)
    {
        while (!session.IsCompleted)
        {
            _time.Advance(TimeSpan.FromSeconds(1));
            await Task.Yield();
        }

        return await session;
    }
}
