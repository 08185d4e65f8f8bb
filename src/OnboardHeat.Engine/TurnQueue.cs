using System.Threading.Channels;

namespace OnboardHeat.Engine;

/// <summary>
/// One output's bounded queue of turns. When full the oldest goes; <see cref="Dropped"/> says how many went.
/// </summary>
public sealed class TurnQueue
{
    private readonly Channel<Turn> _turns;
    private long _dropped;

    internal TurnQueue(string name, int capacity)
    {
        Name = name;
        _turns = Channel.CreateBounded<Turn>(
            new BoundedChannelOptions(capacity) { FullMode = BoundedChannelFullMode.DropOldest, SingleReader = true },
            _ => Interlocked.Increment(ref _dropped));
    }

    /// <summary>Whose queue it is, for the log.</summary>
    public string Name { get; }

    /// <summary>Turns lost because the reader was slow.</summary>
    public long Dropped => Interlocked.Read(ref _dropped);

    /// <summary>Reads turns until the feed ends.</summary>
    public ChannelReader<Turn> Reader => _turns.Reader;

    internal void Add(Turn turn) => _turns.Writer.TryWrite(turn);

    internal void Complete() => _turns.Writer.TryComplete();
}
