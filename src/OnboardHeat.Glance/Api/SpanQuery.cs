using System.Globalization;
using Microsoft.AspNetCore.Http;

namespace OnboardHeat.Glance.Api;

/// <summary>Two dates of a request.</summary>
/// <param name="From">The earlier.</param>
/// <param name="To">The later.</param>
internal readonly record struct SpanQuery(DateTimeOffset From, DateTimeOffset To)
{
    /// <summary>Reads them; null after answering 400 where they are missing or the wrong way round.</summary>
    public static async Task<SpanQuery?> ReadAsync(HttpContext context)
    {
        var query = context.Request.Query;
        if (TryTime(query["from"], out var from) && TryTime(query["to"], out var to) && from < to)
        {
            return new SpanQuery(from, to);
        }

        await Body.SayAsync(context, StatusCodes.Status400BadRequest,
            "from and to are needed: ISO 8601 with offset, from before to.");
        return null;
    }

    /// <summary>Reads a date.</summary>
    public static bool TryTime(string? text, out DateTimeOffset time) => DateTimeOffset.TryParse(
        text, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal,
        out time);
}
