namespace OnboardHeat.Probes.OneWire;

/// <summary>
/// The address every 1-Wire device carries for life, as Linux writes it: family, dash, twelve hexadecimal digits.
/// </summary>
internal static class RomAddress
{
    /// <summary>
    /// The family of the DS18B20, the probe this daemon is made for (maker's data sheet: family code 28h).
    /// </summary>
    public const string Ds18b20Family = "28";

    /// <summary>Whether it is written as an address. Anything else must not become part of a path.</summary>
    public static bool IsWellFormed(string rom)
    {
        if (rom.Length != 15 || rom[2] != '-')
        {
            return false;
        }

        for (var i = 0; i < rom.Length; i++)
        {
            if (i != 2 && !char.IsAsciiHexDigit(rom[i]))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>The two digits that say what kind of device it is.</summary>
    public static string FamilyOf(string rom) => rom.Length >= 2 ? rom[..2] : rom;
}
