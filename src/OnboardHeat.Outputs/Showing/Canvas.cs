using Iot.Device.Max7219;

namespace OnboardHeat.Outputs.Showing;

/// <summary>
/// A picture of one bit a pixel in the order in which the panel keeps it: pages of eight rows, a byte a column, the
/// lowest bit at the top. Text comes from a bitmap font that the bindings bring for dot matrices.
/// </summary>
internal sealed class Canvas(int height)
{
    public const int Width = 128;

    /// <summary>Pixels from one row of small text to the next.</summary>
    public const int RowPixels = 8;

    private static readonly IFont s_font = Fonts.LCD;

    private readonly byte[] _bytes = new byte[Width * height / 8];

    public int Height { get; } = height;

    /// <summary>The bytes as they are sent, page after page.</summary>
    public ReadOnlySpan<byte> Bytes => _bytes;

    public bool this[int x, int y] => (_bytes[(y / 8 * Width) + x] >> (y % 8) & 1) == 1;

    public void Clear() => Array.Clear(_bytes);

    /// <summary>
    /// Writes text, each dot of the font <paramref name="scale"/> pixels wide and high. Gives the first column after
    /// it.
    /// </summary>
    public int Write(int x, int y, string text, int scale = 1)
    {
        foreach (var letter in text)
        {
            foreach (var column in ColumnsOf(letter))
            {
                for (var row = 0; row < RowPixels; row++)
                {
                    if ((column >> row & 1) == 1)
                    {
                        Dot(x, y + (row * scale), scale);
                    }
                }

                x += scale;
            }

            x += scale;
        }

        return x;
    }

    /// <summary>How wide a text is, with the gap after it, pixels.</summary>
    public static int WidthOf(string text, int scale = 1) => text.Sum(letter => (ColumnsOf(letter).Count + 1) * scale);

    /// <summary>Turns dark and light round in full-width rows: how a headline stands out without colour.</summary>
    public void Invert(int fromY, int rows)
    {
        for (var y = fromY; y < fromY + rows; y++)
        {
            for (var x = 0; x < Width; x++)
            {
                _bytes[(y / 8 * Width) + x] ^= (byte)(1 << (y % 8));
            }
        }
    }

    /// <summary>The font leaves a space no width at all, and knows ASCII only.</summary>
    private static IReadOnlyList<byte> ColumnsOf(char letter) => letter switch
    {
        ' ' => s_space,
        '°' => s_degree,
        > '~' => s_font['?'],
        _ => s_font[letter],
    };

    private static readonly byte[] s_space = [0, 0, 0];
    private static readonly byte[] s_degree = [2, 5, 2];

    private void Dot(int x, int y, int scale)
    {
        for (var dy = 0; dy < scale; dy++)
        {
            for (var dx = 0; dx < scale; dx++)
            {
                if (x + dx is >= 0 and < Width && y + dy >= 0 && y + dy < Height)
                {
                    _bytes[((y + dy) / 8 * Width) + x + dx] |= (byte)(1 << ((y + dy) % 8));
                }
            }
        }
    }
}
