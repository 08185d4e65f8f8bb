using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Screening;

namespace OnboardHeat.Probes.OneWire;

internal static class Scratchpad
{
    public static Reading Judge(ReadOnlySpan<byte> bytes)
    {
        if (!bytes.ContainsAnyExcept((byte)0))
        {
            return Reading.Failed(ReadingFault.AllZero);
        }

        var raw = (short)(bytes[0] | (bytes[1] << 8));
        return raw == 0x0550 && bytes[6] == 0x0C ? Reading.Failed(ReadingFault.PowerOn) : Reading.Of(raw / 16.0);
    }
}
