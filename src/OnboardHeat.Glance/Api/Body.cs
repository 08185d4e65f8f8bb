using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Microsoft.AspNetCore.Http;

namespace OnboardHeat.Glance.Api;

/// <summary>Reads and writes the small JSON bodies of the interface.</summary>
internal static class Body
{
    /// <summary>No request of ours is longer; the server refuses what is.</summary>
    public const int MostBytes = 16 * 1024;

    /// <summary>Reads a body; null after answering 400 or 413 where it is none.</summary>
    public static async Task<T?> ReadAsync<T>(HttpContext context, JsonTypeInfo<T> form)
        where T : class
    {
        try
        {
            if (await JsonSerializer.DeserializeAsync(context.Request.Body, form, context.RequestAborted) is { } body)
            {
                return body;
            }
        }
        catch (JsonException)
        {
        }
        catch (BadHttpRequestException e)
        {
            await SayAsync(context, e.StatusCode, "The body is too long or broken.");
            return null;
        }

        await SayAsync(context, StatusCodes.Status400BadRequest, "That is not the JSON this address takes.");
        return null;
    }

    /// <summary>Answers with an object.</summary>
    public static Task WriteAsync<T>(HttpContext context, T body, JsonTypeInfo<T> form)
    {
        context.Response.ContentType = "application/json";
        return JsonSerializer.SerializeAsync(context.Response.Body, body, form, context.RequestAborted);
    }

    /// <summary>Answers with a status and words.</summary>
    public static Task SayAsync(HttpContext context, int status, string words)
    {
        context.Response.StatusCode = status;
        return WriteAsync(context, new Message(words), ApiJson.Default.Message);
    }
}
