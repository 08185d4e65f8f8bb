namespace OnboardHeat.Core.Scans;

/// <summary>Which channels and signals the van has. What is not fitted is said to be unjudged, never guessed.</summary>
public sealed class FittedSet
{
    private readonly bool[] _channels = new bool[Channels.Count];
    private readonly bool[] _signals = new bool[Signals.Count];

    /// <summary>A set of the given channels and signals.</summary>
    public FittedSet(IEnumerable<Channel> channels, IEnumerable<Signal> signals)
    {
        ArgumentNullException.ThrowIfNull(channels);
        ArgumentNullException.ThrowIfNull(signals);
        foreach (var channel in channels)
        {
            _channels[(int)channel] = true;
        }

        foreach (var signal in signals)
        {
            _signals[(int)signal] = true;
        }
    }

    /// <summary>Whether a probe is fitted at this place.</summary>
    public bool Has(Channel channel) => _channels[(int)channel];

    /// <summary>Whether this signal is wired.</summary>
    public bool Has(Signal signal) => _signals[(int)signal];

    /// <summary>Whether any probe sits on the tank itself.</summary>
    public bool HasTankProbe => Has(Channel.TankTop) || Has(Channel.TankMiddle) || Has(Channel.TankBottom);
}
