using System.Text;
using QRCoder;

namespace OnboardHeat.Daemon.Commands;

/// <summary>
/// A QR code in half blocks, black on white whatever the terminal's own colours are: cameras read no white on black.
/// </summary>
internal static class QrPicture
{
    private const string BlackOnWhite = "\u001b[30;107m", Back = "\u001b[0m\n";

    public static string Of(string text)
    {
        using var made = QRCodeGenerator.GenerateQrCode(text, QRCodeGenerator.ECCLevel.M);
        var rows = made.ModuleMatrix;
        var picture = new StringBuilder();
        for (var top = 0; top < rows.Count; top += 2)
        {
            picture.Append(BlackOnWhite);
            for (var x = 0; x < rows[top].Count; x++)
            {
                var isLowerDark = top + 1 < rows.Count && rows[top + 1][x];
                picture.Append((rows[top][x], isLowerDark) switch { (true, true) =>
                    '█', (true, false) => '▀', (false, true) => '▄', _ => ' ' });
            }

            picture.Append(Back);
        }

        return picture.ToString();
    }
}
