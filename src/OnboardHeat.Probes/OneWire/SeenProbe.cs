using OnboardHeat.Core.Scans;

namespace OnboardHeat.Probes.OneWire;

/// <summary>One device as it hangs on the bus, whatever the configuration says of it.</summary>
/// <param name="Rom">Its address.</param>
/// <param name="Reading">What it reads, without any offset.</param>
public sealed record SeenProbe(string Rom, Reading Reading)
{
    /// <summary>The digits of its address that say what kind of device it is; 28 is the DS18B20.</summary>
    public string Family => RomAddress.FamilyOf(Rom);

    /// <summary>Whether it is a DS18B20, the probe this daemon is made for.</summary>
    public bool IsDs18b20 => Family == RomAddress.Ds18b20Family;
}
