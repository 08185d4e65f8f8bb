using Microsoft.Extensions.Logging;
using OnboardHeat.Engine;
using OnboardHeat.Engine.FirstDrive;
using OnboardHeat.Engine.Keeping;

namespace OnboardHeat.Daemon.Running;

/// <summary>Ticks the check list of the first drive while the van drives, and keeps it.</summary>
internal sealed class FirstDriveWorker(TurnQueue turns, StateSaver saver, ILogger log)
{
    /// <summary>Turns that may wait; one lost costs nothing.</summary>
    public const int QueueCapacity = 16;

    private readonly FirstDriveList _list = new(saver.Newest.FirstDrive);
    private volatile IReadOnlyDictionary<string, string> _doubts = new Dictionary<string, string>();

    /// <summary>What this run has shown to be otherwise, by the name of its step.</summary>
    public IReadOnlyDictionary<string, string> Doubts => _doubts;

    /// <summary>Reads turns until the feed ends.</summary>
    public async Task RunAsync()
    {
        await foreach (var turn in turns.Reader.ReadAllAsync().ConfigureAwait(false))
        {
            var hasChanged = _list.Observe(turn);
            if (_list.Doubts.Count != _doubts.Count || hasChanged)
            {
                _doubts = new Dictionary<string, string>(_list.Doubts);
            }

            if (hasChanged)
            {
                var seen = _list.Seen;
                saver.Change(content => content with { FirstDrive = seen });
                Log.FirstDrive(
                    log, seen.Count, FirstDriveStep.All.Count, seen.Count == 0
                        ? "begins anew"
                        : string.Join(", ", seen));
            }
        }
    }
}
