using OnboardHeat.Daemon.Probing;

namespace OnboardHeat.Daemon.Tests.Probing;

/// <summary>A bus that shows what the test says, look by look, and lets a second pass with each.</summary>
internal sealed class FakeBusView(Func<int, BusSight> at, Action onLook) : IBusView
{
    private int _looks;

    public string Words => "shown by a test";

    public (string Channel, double OffsetKelvin)? Kept { get; private set; }

    public string? Problem { get; init; }

    public Task<BusSight> LookAsync(CancellationToken cancellationToken)
    {
        onLook();
        return Task.FromResult(at(_looks++));
    }

    public Task<string?> KeepOffsetAsync(string channel, double offsetKelvin, string reference)
    {
        Kept = Problem is null ? (channel, offsetKelvin) : null;
        return Task.FromResult(Problem);
    }

    public void Dispose()
    {
    }
}
