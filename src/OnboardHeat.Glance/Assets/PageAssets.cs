using System.Collections.Concurrent;
using System.Reflection;
using Microsoft.AspNetCore.Http;
using Microsoft.Net.Http.Headers;

namespace OnboardHeat.Glance.Assets;

/// <summary>The page's files: embedded in the program, so there is no folder to serve, to watch or to lose.</summary>
internal sealed class PageAssets
{
    private const string Prefix = "page/";
    private readonly ConcurrentDictionary<string, PageAsset> _loaded = new(StringComparer.Ordinal);

    /// <summary>Every file name.</summary>
    public static IEnumerable<string> Names => Assembly.GetExecutingAssembly().GetManifestResourceNames()
        .Where(name => name.StartsWith(Prefix, StringComparison.Ordinal)).Select(name => name[Prefix.Length..]);

    /// <summary>The file, read at its first use; null if there is none of that name.</summary>
    public PageAsset? Find(string name)
    {
        if (_loaded.TryGetValue(name, out var known))
        {
            return known;
        }

        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(Prefix + name);
        if (stream is null)
        {
            return null;
        }

        using var copy = new MemoryStream();
        stream.CopyTo(copy);
        return _loaded.GetOrAdd(name, new PageAsset(TypeOf(name), copy.ToArray()));
    }

    /// <summary>Sends a file, or only that it has not changed.</summary>
    public async Task SendAsync(HttpContext context, string name)
    {
        if (Find(name) is not { } asset)
        {
            context.Response.StatusCode = StatusCodes.Status404NotFound;
            return;
        }

        var headers = context.Response.Headers;
        headers.ETag = asset.Tag;
        headers.CacheControl = "no-cache";
        headers.Vary = HeaderNames.AcceptEncoding;
        if (context.Request.Headers.IfNoneMatch == asset.Tag)
        {
            context.Response.StatusCode = StatusCodes.Status304NotModified;
            return;
        }

        context.Response.ContentType = asset.ContentType;
        var takesBrotli = context.Request.Headers.AcceptEncoding.ToString().Contains("br", StringComparison.Ordinal);
        if (takesBrotli)
        {
            headers.ContentEncoding = "br";
        }

        var body = takesBrotli ? asset.Packed : asset.Plain;
        context.Response.ContentLength = body.Length;
        await context.Response.Body.WriteAsync(body, context.RequestAborted);
    }

    private static string TypeOf(string name) => Path.GetExtension(name) switch
    {
        ".html" => "text/html; charset=utf-8",
        ".css" => "text/css; charset=utf-8",
        ".js" => "text/javascript; charset=utf-8",
        ".json" => "application/json",
        ".svg" => "image/svg+xml",
        _ => "application/octet-stream",
    };
}
