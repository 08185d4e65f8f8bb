using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;
using OnboardHeat.Daemon.Running;

namespace OnboardHeat.Daemon.Tests.Running;

public sealed class WorkersTests
{
    private readonly FakeTimeProvider _time = new();
    private readonly Workers _workers;

    public WorkersTests() => _workers = new Workers(NullLogger.Instance, _time);

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task WorkerThatEndsByItself_IsAnEndNobodyAskedFor(bool isByABug)
    {
        _workers.Add("judging", new TaskCompletionSource().Task);
        _workers.Add("page", isByABug ? Task.FromException(new InvalidCastException("a bug")) : Task.CompletedTask);
        Assert.False(await _workers.WaitAsync(CancellationToken.None));
    }

    [Fact]
    public async Task AskedToStop_IsAnEndThatWasAskedFor()
    {
        using var stopping = new CancellationTokenSource();
        _workers.Add("judging", new TaskCompletionSource().Task);
        var waiting = _workers.WaitAsync(stopping.Token);
        await stopping.CancelAsync();
        Assert.True(await waiting);
    }

    [Fact]
    public async Task WorkerThatDoesNotEnd_IsGivenUpAtTheDeadlineAndTheSmallFileIsClosedBefore()
    {
        var isClosed = false;
        _workers.Add("judging", new TaskCompletionSource().Task);
        var ending = _workers.EndAsync(TimeSpan.FromSeconds(5), "judging", () => isClosed = true);
        _time.Advance(TimeSpan.FromSeconds(4.9));
        Assert.False(ending.IsCompleted);
        _time.Advance(TimeSpan.FromSeconds(0.2));
        await ending;
        Assert.True(isClosed);
    }
}
