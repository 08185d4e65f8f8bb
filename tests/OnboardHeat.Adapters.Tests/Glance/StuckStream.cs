namespace OnboardHeat.Adapters.Tests.Glance;

/// <summary>The way to a reader that reads nothing: what is written waits until it is given up.</summary>
internal sealed class StuckStream : MemoryStream
{
    private readonly TaskCompletionSource _asked = new(TaskCreationOptions.RunContinuationsAsynchronously);

    /// <summary>Ends when something is to be written.</summary>
    public Task IsAsked => _asked.Task;

    public override ValueTask WriteAsync(ReadOnlyMemory<byte> buffer, CancellationToken cancellationToken = default)
    {
        _asked.TrySetResult();
        return new ValueTask(new TaskCompletionSource().Task.WaitAsync(cancellationToken));
    }
}
