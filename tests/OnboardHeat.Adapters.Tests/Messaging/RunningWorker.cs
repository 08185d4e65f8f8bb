using Microsoft.Extensions.Logging;
using OnboardHeat.Adapters.Tests.Support;
using OnboardHeat.Engine;
using OnboardHeat.Engine.Options;
using OnboardHeat.Engine.Ports;
using OnboardHeat.Messaging;

namespace OnboardHeat.Adapters.Tests.Messaging;

/// <summary>The whole messaging adapter at work on a real connection and the real clock.</summary>
internal sealed class RunningWorker : IAsyncDisposable
{
    public const string Root = "onboardheat/pass-hopper/";

    private readonly CancellationTokenSource _stopping = new();
    private readonly TurnFeed _feed = new();
    private readonly MessagingWorker _worker;
    private readonly Task _running;

    public RunningWorker(MessagingOptions options, IRecordQueue? record = null)
    {
        _worker = new MessagingWorker(
            options, "pass-hopper", SomeTurn.Fitted, _feed.Subscribe("messaging", MessagingWorker.QueueCapacity), Inbox,
            record,
            TimeSpan.FromSeconds(10), TimeProvider.System, Log);
        _running = _worker.RunAsync(_stopping.Token);
    }

    public ActionInbox Inbox { get; } = new();

    public LineLog Log { get; } = new();

    public MessagingWorker Worker => _worker;

    public void Publish(Turn turn) => _feed.Publish(turn);

    public Task ConnectedAsync() => Until.HoldsAsync(
        () => Log.Lines.Any(line => line.Contains("connected")),
        () => $"the adapter is connected; it said: {string.Join(" / ", Log.Lines)}");

    /// <summary>Stops as the daemon does; an exception of the worker is a failed test.</summary>
    public async Task StopAsync()
    {
        await _stopping.CancelAsync();
        await _running;
        await _worker.DisposeAsync();
    }

    public async ValueTask DisposeAsync()
    {
        await StopAsync();
        _stopping.Dispose();
    }
}
