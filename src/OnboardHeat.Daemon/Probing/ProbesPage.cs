using System.Globalization;

namespace OnboardHeat.Daemon.Probing;

/// <summary>
/// The bus in lines: each probe with its reading and role, then what looks wrong and what to do about it.
/// </summary>
internal static class ProbesPage
{
    /// <summary>
    /// Twice what a sound DS18B20 can be wrong by (0.5 K from -10 to 85 °C, maker's data sheet): beyond it an offset
    /// deserves a look.
    /// </summary>
    public const double PlausibleOffsetKelvin = 1;

    /// <summary>The lines.</summary>
    public static IEnumerable<string> Lines(BusSight sight)
    {
        if (!sight.HasAnswered)
        {
            yield return "the 1-Wire bus does not answer";
        }
        else if (!sight.Probes.Any(probe => probe.IsOnBus))
        {
            yield return "nothing hangs on the 1-Wire bus; 1-Wire switched on, plug in, supply there?";
        }

        foreach (var probe in sight.Probes)
        {
            yield return $"  {probe.Rom,-15}  {Shown(probe),11}  {Role(probe),-14}{Offsets(probe)}".TrimEnd();
        }

        foreach (var warning in Warnings(sight))
        {
            yield return $"! {warning}";
        }
    }

    /// <summary>What looks wrong.</summary>
    public static IEnumerable<string> Warnings(BusSight sight)
    {
        foreach (var probe in sight.Probes)
        {
            var role = string.Join(" and ", probe.Channels);
            if (probe.Channels.Count > 1)
            {
                yield return $"{probe.Rom} is configured as {role}: one probe sits at one place";
            }

            if (!probe.Rom.StartsWith("28-", StringComparison.Ordinal))
            {
                yield return $"{probe.Rom} is of family {probe.Rom[..2]} and no DS18B20 (28): "
                    + "its faults are not all told apart";
            }

            if (!probe.IsOnBus && sight.HasAnswered)
            {
                yield return $"{role} ({probe.Rom}) is not on the bus: plug, wire, or another probe was fitted";
            }

            var offset = probe.OwnerOffsetKelvin + probe.LearntOffsetKelvin;
            if (Math.Abs(offset) > PlausibleOffsetKelvin || Math.Abs(probe.OwnerOffsetKelvin) > PlausibleOffsetKelvin)
            {
                yield return string.Create(
                    CultureInfo.InvariantCulture,
                    $"{role} has an offset of {offset:+0.00;-0.00;0.00} K, "
                    + $"{probe.OwnerOffsetKelvin:+0.00;-0.00;0.00} K of it the owner's: "
                    + $"a sound probe is within 0.5 K; was it compared, and is it sound?");
            }
        }
    }

    private static string Shown(ProbeSight probe) => probe.Celsius is { } celsius
        ? string.Create(CultureInfo.InvariantCulture, $"{celsius:0.00} °C")
        : probe.IsOnBus ? probe.Fault : "not there";

    private static string Role(ProbeSight probe) =>
        probe.Channels.Count == 0 ? "not configured" : string.Join(" and ", probe.Channels);

    private static string Offsets(ProbeSight probe) => string.Concat(
        Offset(probe.OwnerOffsetKelvin, "by the owner"), Offset(probe.LearntOffsetKelvin, "by pair check"));

    private static string Offset(double kelvin, string by) =>
        kelvin == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $"  {kelvin:+0.00;-0.00} K {by}");
}
