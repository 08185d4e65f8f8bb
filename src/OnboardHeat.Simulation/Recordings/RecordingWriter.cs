using System.Globalization;
using OnboardHeat.Core.Scans;

namespace OnboardHeat.Simulation;

/// <summary>Writes scans as a recorded drive: the CSV form that <c>replay</c> reads.</summary>
internal sealed class RecordingWriter
{
    private readonly TextWriter _to;
    private readonly FittedSet _fitted;
    private readonly bool _hasActions;

    /// <summary>Writes the header row for what is fitted; lines end with LF.</summary>
    public RecordingWriter(TextWriter to, FittedSet fitted, bool hasActions = false)
    {
        ArgumentNullException.ThrowIfNull(to);
        ArgumentNullException.ThrowIfNull(fitted);
        _to = to;
        _fitted = fitted;
        _hasActions = hasActions;
        _to.Write("time");
        foreach (var channel in Channels.All)
        {
            if (fitted.Has(channel))
            {
                _to.Write($",{Channels.NameOf(channel)}");
            }
        }

        foreach (var signal in Signals.All)
        {
            if (fitted.Has(signal))
            {
                _to.Write($",{Signals.NameOf(signal)}");
            }
        }

        _to.Write(hasActions ? ",action\n" : "\n");
    }

    /// <summary>
    /// Writes a scan as one row (with the first of its actions: plans space them). A reading that failed is an empty
    /// cell.
    /// </summary>
    public void Write(Scan scan)
    {
        ArgumentNullException.ThrowIfNull(scan);
        _to.Write(scan.Utc is { } utc ? utc.ToString("yyyy-MM-dd'T'HH:mm:ss.FFFK", CultureInfo.InvariantCulture) : "");
        foreach (var channel in Channels.All)
        {
            if (_fitted.Has(channel))
            {
                var reading = scan[channel];
                _to.Write(reading.HasValue ? string.Create(CultureInfo.InvariantCulture, $",{reading.Value}") : ",");
            }
        }

        foreach (var signal in Signals.All)
        {
            if (_fitted.Has(signal))
            {
                _to.Write(scan[signal] switch { true => ",1", false => ",0", null => "," });
            }
        }

        if (_hasActions)
        {
            _to.Write(',');
            _to.Write(scan.Actions.Count > 0 ? Quoted(scan.Actions[0].ToString()) : "");
        }

        _to.Write('\n');
    }

    /// <summary>Drives a van to the end of its plan and writes every scan.</summary>
    public static void WriteAll(SimulatedVan van, TextWriter to)
    {
        ArgumentNullException.ThrowIfNull(van);
        var writer = new RecordingWriter(to, van.Traits.Fitted, van.Plan.Actions.Count > 0);
        while (van.Step())
        {
            writer.Write(van.Scan);
        }
    }

    private static string Quoted(string text) =>
        text.AsSpan().IndexOfAny(",\"\r\n") < 0 ? text : $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
