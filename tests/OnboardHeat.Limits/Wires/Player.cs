using OnboardHeat.Core.Scans;

namespace OnboardHeat.Limits.Wires;

/// <summary>Shows a drive on a fabricated bus in real time, from a chosen moment of it.</summary>
internal sealed class Player : IAsyncDisposable
{
    private static readonly TimeSpan s_step = TimeSpan.FromMilliseconds(500);

    private readonly CancellationTokenSource _ending = new();
    private readonly Drive _drive;
    private readonly WireTree _tree;
    private readonly double _fromS;
    private readonly long _began = TimeProvider.System.GetTimestamp();
    private readonly Task _playing;

    public Player(Drive drive, WireTree tree, double fromS)
    {
        (_drive, _tree, _fromS) = (drive, tree, fromS);
        Show();
        _playing = PlayAsync();
    }

    /// <summary>The moment of the drive that is shown now, seconds from its start.</summary>
    public double NowS => _fromS + TimeProvider.System.GetElapsedTime(_began).TotalSeconds;

    /// <summary>The probe that is pulled off for now.</summary>
    public Channel? Unplugged { get; set; }

    public async ValueTask DisposeAsync()
    {
        await _ending.CancelAsync();
        await _playing;
        _ending.Dispose();
    }

    private async Task PlayAsync()
    {
        while (!_ending.IsCancellationRequested)
        {
            Show();
            await Task.Delay(
                s_step, TimeProvider.System, _ending.Token).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }

    private void Show()
    {
        var scan = _drive.At(NowS);
        var unplugged = Unplugged;
        foreach (var channel in _drive.Fitted)
        {
            var reading = scan[channel];
            if (channel != unplugged && reading.HasValue)
            {
                _tree.Set(channel, reading.Value);
            }
            else
            {
                _tree.Unplug(channel);
            }
        }
    }
}
