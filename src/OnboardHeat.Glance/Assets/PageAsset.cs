using System.IO.Compression;
using System.Security.Cryptography;

namespace OnboardHeat.Glance.Assets;

/// <summary>One file of the page, held ready in both forms with its tag.</summary>
internal sealed class PageAsset
{
    public PageAsset(string contentType, byte[] plain)
    {
        ContentType = contentType;
        Plain = plain;
        Tag = $"\"{Convert.ToHexStringLower(SHA256.HashData(plain)[..8])}\"";
        using var packed = new MemoryStream();
        using (var brotli = new BrotliStream(packed, CompressionLevel.Optimal, leaveOpen: true))
        {
            brotli.Write(plain);
        }

        Packed = packed.ToArray();
    }

    public string ContentType { get; }

    public string Tag { get; }

    public byte[] Plain { get; }

    public byte[] Packed { get; }
}
