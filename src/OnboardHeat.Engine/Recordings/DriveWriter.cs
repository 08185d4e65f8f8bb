using System.Globalization;
using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Screening;
using OnboardHeat.Engine.Pictures;

namespace OnboardHeat.Engine.Recordings;

/// <summary>
/// Writes scans as a recorded drive that <see cref="RecordingReader"/> reads back without loss: run and elapsed time,
/// every value to its last digit, faults by name, each action, and how the daemon itself fared. So a replay raises the
/// same alarms.
/// </summary>
internal sealed class DriveWriter
{
    /// <summary>
    /// What no probe can report is written by its fault's name; a reader takes no such number for a temperature.
    /// </summary>
    private const double CelsiusMaxSize = 1e6;

    private readonly TextWriter _to;
    private readonly Channel[] _channels;
    private readonly Signal[] _signals;

    /// <summary>Writes the header row; lines end with LF.</summary>
    /// <param name="to">Takes the text.</param>
    /// <param name="fitted">Channels and signals that get a column.</param>
    public DriveWriter(TextWriter to, FittedSet fitted)
    {
        ArgumentNullException.ThrowIfNull(to);
        ArgumentNullException.ThrowIfNull(fitted);
        _to = to;
        _channels = [.. Channels.All.ToArray().Where(fitted.Has)];
        _signals = [.. Signals.All.ToArray().Where(fitted.Has)];
        var names = _channels.Select(Channels.NameOf).Concat(_signals.Select(Signals.NameOf));
        _to.Write($"time,run,elapsed_s,{string.Join(',', names.Append("action").Append("house"))}\n");
    }

    /// <summary>Writes a scan: one row, and one more for each action after the first.</summary>
    /// <param name="scan">The scan.</param>
    /// <param name="utc">Its date; null where it has none that can be believed.</param>
    public void Write(Scan scan, DateTimeOffset? utc)
    {
        ArgumentNullException.ThrowIfNull(scan);
        Begin(scan, utc);
        foreach (var channel in _channels)
        {
            _to.Write(',');
            _to.Write(CellOf(scan[channel]));
        }

        foreach (var signal in _signals)
        {
            _to.Write(scan[signal] switch { true => ",1", false => ",0", null => "," });
        }

        _to.Write(',');
        _to.Write(scan.Actions.Count > 0 ? CellGuard.Cell(scan.Actions[0].ToString()) : "");
        _to.Write(',');
        _to.Write(CellGuard.Cell(scan.House.ToString()));
        _to.Write('\n');
        foreach (var action in scan.Actions.Skip(1))
        {
            Begin(scan, utc);
            _to.Write(new string(',', _channels.Length + _signals.Length + 1));
            _to.Write(CellGuard.Cell(action.ToString()));
            _to.Write(",\n");
        }
    }

    private void Begin(Scan scan, DateTimeOffset? utc)
    {
        _to.Write(utc?.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss.FFFFFFF'Z'", CultureInfo.InvariantCulture));
        _to.Write(string.Create(CultureInfo.InvariantCulture, $",{scan.Run},{scan.Elapsed.TotalSeconds}"));
    }

    private static string CellOf(Reading reading) => reading switch
    {
        { Fault: ReadingFault.Missing } => "",
        { HasValue: false } => PublicNames.Of(reading.Fault)!,
        { Value: > CelsiusMaxSize or < -CelsiusMaxSize } => PublicNames.Of(ReadingFault.OutOfRange)!,
        _ => reading.Value.ToString(CultureInfo.InvariantCulture),
    };
}
