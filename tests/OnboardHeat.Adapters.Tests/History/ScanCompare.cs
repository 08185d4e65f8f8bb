using OnboardHeat.Core.Scans;

namespace OnboardHeat.Adapters.Tests.History;

/// <summary>Says how two scans differ, to the last bit; empty when they do not.</summary>
internal static class ScanCompare
{
    public static string Difference(Scan a, Scan b)
    {
        if (a.Run != b.Run || a.Elapsed != b.Elapsed || a.Utc != b.Utc || a.Utc?.Offset != b.Utc?.Offset
            || a.IsUtcTrusted != b.IsUtcTrusted)
        {
            return $"time: {a.Run} {a.Elapsed} {a.Utc:O} {a.IsUtcTrusted} / {b.Run} {b.Elapsed} {b.Utc:O}"
                + $" {b.IsUtcTrusted}";
        }

        foreach (var channel in Channels.All)
        {
            if (a[channel].Fault != b[channel].Fault
                || BitConverter.DoubleToInt64Bits(a[channel].Value) != BitConverter.DoubleToInt64Bits(b[channel].Value))
            {
                return $"{Channels.NameOf(channel)}: {a[channel]} / {b[channel]}";
            }
        }

        foreach (var signal in Signals.All)
        {
            if (a[signal] != b[signal])
            {
                return $"{Signals.NameOf(signal)}: {a[signal]} / {b[signal]}";
            }
        }

        return !a.Actions.SequenceEqual(b.Actions) ? "actions" : a.House != b.House ? $"house: {a.House} / {b.House}"
            : "";
    }
}
