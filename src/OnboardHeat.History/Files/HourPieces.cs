namespace OnboardHeat.History.Files;

/// <summary>
/// Cuts an hour's scans into documents that fill the engine's pages. It looks for room only in pages that are surely
/// free enough, in five classes; after a document of four kilobytes the rest of a page of eight finds no other of its
/// kind, and half the file is empty.
/// </summary>
internal static class HourPieces
{
    /// <summary>Field of an hour's first piece, or of all of it.</summary>
    public const string Scans = "s";

    /// <summary>Field that says how many pieces follow.</summary>
    public const string More = "n";

    /// <summary>Field of a further piece.</summary>
    public const string Piece = "p";

    /// <summary>An hour has fewer pieces than this; their numbers are the hour's times this and on.</summary>
    public const int Most = 64;

    /// <summary>
    /// Five of them fill a page of 8,192 bytes but for its last tenth (measured: 0.6 of the bytes of whole hours).
    /// </summary>
    private const int PieceBytes = 1400;

    public static long IdOf(long hour, int piece) => (hour * Most) + piece;

    public static IReadOnlyList<byte[]> Cut(byte[] scans)
    {
        var count = Math.Clamp((scans.Length + PieceBytes - 1) / PieceBytes, 1, Most - 1);
        var length = (scans.Length + count - 1) / count;
        return [.. scans.Chunk(length)];
    }
}
