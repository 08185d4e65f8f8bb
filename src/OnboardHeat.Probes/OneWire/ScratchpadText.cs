using System.Globalization;
using OnboardHeat.Core.Screening;

namespace OnboardHeat.Probes.OneWire;

/// <summary>
/// The text of the kernel's <c>w1_slave</c> file: nine bytes with the kernel's verdict on their checksum.
/// </summary>
internal static class ScratchpadText
{
    /// <summary>
    /// Finds the nine bytes of the first line. False when the file is empty (any failed read) or something else.
    /// </summary>
    public static bool TryParse(ReadOnlySpan<char> text, Span<byte> scratchpad)
    {
        if (text.Length < (Ds18b20Scratchpad.Length * 3) - 1)
        {
            return false;
        }

        for (var i = 0; i < Ds18b20Scratchpad.Length; i++)
        {
            if (!byte.TryParse(
                text.Slice(i * 3, 2), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out scratchpad[i]))
            {
                return false;
            }
        }

        return true;
    }
}
