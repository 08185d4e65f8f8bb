using OnboardHeat.Core.Scans;

namespace OnboardHeat.Engine.Recordings;

/// <summary>One row of a recording, taken apart. Reused from row to row.</summary>
internal sealed class RecordingRow
{
    private readonly Reading[] _readings = new Reading[Channels.Count];
    private readonly sbyte[] _signals = new sbyte[Signals.Count];

    public long Line { get; set; }

    public int Run { get; set; }

    public double? ElapsedS { get; set; }

    public DateTimeOffset? Utc { get; set; }

    public PersonAction? Action { get; set; }

    public HouseReport? House { get; set; }

    public void SetReading(int channel, Reading reading) => _readings[channel] = reading;

    public void SetSignal(int signal, bool level) => _signals[signal] = level ? (sbyte)1 : (sbyte)0;

    public void Clear()
    {
        Array.Fill(_readings, Reading.None);
        Array.Fill(_signals, (sbyte)-1);
        Run = 1;
        ElapsedS = null;
        Utc = null;
        Action = null;
        House = null;
    }

    /// <summary>
    /// Adds the row to a scan. Gives the name of a channel or signal that the scan has already, else null.
    /// </summary>
    public string? AddTo(Scan scan)
    {
        foreach (var channel in Channels.All)
        {
            if (_readings[(int)channel] == Reading.None)
            {
                continue;
            }

            if (scan[channel] != Reading.None)
            {
                return Channels.NameOf(channel);
            }

            scan[channel] = _readings[(int)channel];
        }

        foreach (var signal in Signals.All)
        {
            if (_signals[(int)signal] < 0)
            {
                continue;
            }

            if (scan[signal] is not null)
            {
                return Signals.NameOf(signal);
            }

            scan[signal] = _signals[(int)signal] == 1;
        }

        if (Action is { } action)
        {
            scan.Actions = [.. scan.Actions, action];
        }

        scan.House = House ?? scan.House;
        return null;
    }
}
