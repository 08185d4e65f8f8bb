using System.Globalization;
using System.Text.Json;
using OnboardHeat.Core;
using OnboardHeat.Core.Journeys;
using OnboardHeat.Core.Shower;
using OnboardHeat.Core.Watch;
using OnboardHeat.Engine.Pictures;

namespace OnboardHeat.Daemon.Replay;

/// <summary>Writes what a replay tells: one JSON object a line, nothing else.</summary>
internal sealed class ReplayLines : IDisposable
{
    /// <summary>Version of the lines' form.</summary>
    private const int Version = 1;

    /// <summary>
    /// Decimals of kilowatt-hours and minutes, and of every other figure: finer than anything that is known.
    /// </summary>
    private const int Decimals = 3;

    private static ReadOnlySpan<byte> LineEnd => "\n"u8;

    private readonly BufferedStream _out;
    private readonly Utf8JsonWriter _json;

    public ReplayLines(Stream stream)
    {
        _out = new BufferedStream(stream, 65_536);
        _json = new Utf8JsonWriter(_out, new JsonWriterOptions
        {
            // The lines are read by programs, never set into a page: quotes and degree signs may stand as they are.
            Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        });
    }

    /// <summary>An alarm's condition came or went.</summary>
    public void Alarm(string file, Picture picture, AlarmChange change)
    {
        Begin("alarm", file, picture);
        _json.WriteString("alarm"u8, change.Definition.Name);
        _json.WriteString("subject"u8, change.Subject);
        _json.WriteString("state"u8, change.IsRaised ? "raised"u8 : "cleared"u8);
        _json.WriteString("priority"u8, PublicNames.Of(change.Definition.Priority));
        _json.WriteString("because"u8, change.Because);
        End();
    }

    /// <summary>How the van's hot water stands.</summary>
    public void Status(string file, Picture picture, Forecast forecast)
    {
        Begin("status", file, picture);
        Number("storedEnergyKWh"u8, forecast.StoredEnergyKWh);
        Number("showerMinutes"u8, forecast.ShowerMinutes);
        Number("showerMinutesLow"u8, forecast.ShowerMinutesLow);
        Number("showerMinutesHigh"u8, forecast.ShowerMinutesHigh);
        _json.WriteString("ready"u8, PublicNames.Of(forecast.Ready));
        Time("readyAt"u8, After(picture.Utc, forecast.Ready == ReadyKind.At ? forecast.ReadyInS : null));
        _json.WriteString("until"u8, PublicNames.Of(forecast.Until));
        Time("usableUntil"u8, After(picture.Utc, forecast.Until == UntilKind.At ? forecast.UsableForS : null));
        Number("heatingWatts"u8, forecast.HeatingWatts);
        Number("lossCoefficientWPerK"u8, forecast.LossCoefficientWPerK);
        End();
    }

    /// <summary>A journey has ended.</summary>
    public void Journey(string file, Picture picture, Journey journey)
    {
        Begin("journey", file, picture);
        _json.WriteString("type"u8, PublicNames.Of(journey.Type));
        Number("from"u8, journey.FromS);
        Number("to"u8, journey.ToS);
        Number("startCelsius"u8, journey.StartCelsius);
        Number("endCelsius"u8, journey.EndCelsius);
        Number("peakCelsius"u8, journey.PeakCelsius);
        Number("gainedKWh"u8, journey.GainedKWh);
        Number("meanWatts"u8, journey.MeanWatts);
        End();
    }

    /// <summary>Hands everything to the output.</summary>
    public void Flush() => _out.Flush();

    public void Dispose()
    {
        _json.Dispose();
        _out.Dispose();
    }

    private static DateTimeOffset? After(DateTimeOffset? utc, double? seconds) =>
        utc is { } from && seconds is { } span ? from.AddSeconds(span) : null;

    private void Begin(string kind, string file, Picture picture)
    {
        _json.WriteStartObject();
        _json.WriteNumber("v"u8, Version);
        _json.WriteString("kind"u8, kind);
        _json.WriteString("file"u8, file);
        _json.WriteNumber("run"u8, picture.Run);
        _json.WriteNumber("elapsedS"u8, Math.Round(picture.Elapsed.TotalSeconds, Decimals));
        Time("time"u8, picture.Utc);
    }

    private void End()
    {
        _json.WriteEndObject();
        _json.Flush();
        _json.Reset();
        _out.Write(LineEnd);
    }

    private void Number(ReadOnlySpan<byte> name, double? value)
    {
        if (value is { } number)
        {
            _json.WriteNumber(name, Math.Round(number, Decimals));
        }
        else
        {
            _json.WriteNull(name);
        }
    }

    private void Time(ReadOnlySpan<byte> name, DateTimeOffset? utc)
    {
        if (utc is not { } time)
        {
            _json.WriteNull(name);
            return;
        }

        Span<char> text = stackalloc char[32];
        var format = time.Ticks % TimeSpan.TicksPerSecond == 0 ? "yyyy-MM-ddTHH:mm:ssZ" : "yyyy-MM-ddTHH:mm:ss.fffZ";
        time.UtcDateTime.TryFormat(text, out var length, format, CultureInfo.InvariantCulture);
        _json.WriteString(name, text[..length]);
    }
}
