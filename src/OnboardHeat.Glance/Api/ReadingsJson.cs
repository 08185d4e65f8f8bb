using System.Text.Json;
using Microsoft.AspNetCore.Http;
using OnboardHeat.Core.Scans;
using OnboardHeat.Engine.Pictures;
using OnboardHeat.Engine.Ports;

namespace OnboardHeat.Glance.Api;

/// <summary>Readings as one JSON array, written as they are read: a month of them is tens of megabytes.</summary>
internal sealed class ReadingsJson(IRecordReader record, FittedSet fitted)
{
    /// <summary>What is held before it goes out.</summary>
    private const int FlushBytes = 32 * 1024;

    public async Task SendAsync(SpanQuery span, HttpContext context)
    {
        await using var json = new Utf8JsonWriter(context.Response.BodyWriter);
        json.WriteStartArray();
        await foreach (var scan in record.ReadScansAsync(span.From, span.To, context.RequestAborted))
        {
            Write(json, scan);
            if (json.BytesPending > FlushBytes)
            {
                await json.FlushAsync(context.RequestAborted);
                await context.Response.BodyWriter.FlushAsync(context.RequestAborted);
            }
        }

        json.WriteEndArray();
        await json.FlushAsync(context.RequestAborted);
    }

    private void Write(Utf8JsonWriter json, Scan scan)
    {
        json.WriteStartObject();
        json.WriteNumber("run", scan.Run);
        json.WriteNumber("elapsedS", scan.Elapsed.TotalSeconds);
        json.WriteString("time", PictureJson.TimeOf(scan.Utc));
        json.WriteBoolean("timeTrusted", scan.IsUtcTrusted);
        foreach (var channel in Channels.All)
        {
            if (fitted.Has(channel) && scan[channel].HasValue)
            {
                json.WriteNumber(Channels.NameOf(channel), scan[channel].Value);
            }
        }

        foreach (var signal in Signals.All)
        {
            if (fitted.Has(signal) && scan[signal] is { } level)
            {
                json.WriteBoolean(Signals.NameOf(signal), level);
            }
        }

        json.WriteEndObject();
    }
}
