using System.IO.Compression;
using System.Security.Cryptography;

namespace OnboardHeat.Glance.Assets;

/// <summary>One file of the page, held ready in both forms with its tag.</summary>
internal sealed class PageAsset
{
    /// <summary>
    /// A file of some ten thousand bytes: a window beyond that only takes memory, as does the last per cent.
    /// </summary>
    private const int Quality = 9, WindowBits = 16;

    public PageAsset(string contentType, byte[] plain)
    {
        ContentType = contentType;
        Plain = plain;
        Tag = $"\"{Convert.ToHexStringLower(SHA256.HashData(plain)[..8])}\"";
        var packed = new byte[BrotliEncoder.GetMaxCompressedLength(plain.Length)];
        Packed = BrotliEncoder.TryCompress(plain, packed, out var length, Quality, WindowBits)
            ? packed[..length] : plain;
    }

    public string ContentType { get; }

    public string Tag { get; }

    public byte[] Plain { get; }

    public byte[] Packed { get; }
}
