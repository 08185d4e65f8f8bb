namespace OnboardHeat.Engine.Options;

/// <summary>The bus of the temperature probes and how often it is read.</summary>
public sealed class OneWireOptions
{
    /// <summary>
    /// Name of the bus master under <c>/sys/bus/w1/devices</c> (<c>w1_bus_master1</c>), or the absolute folder of
    /// one; left out: every master there is.
    /// </summary>
    public string? Bus { get; set; }

    /// <summary>
    /// Seconds between scans, 1 to 30; default 2. A failing hose is told within a few scans, and twelve-bit probes
    /// take 0.75 s to convert.
    /// </summary>
    public double ScanSeconds { get; set; } = 2;

    /// <summary>
    /// Seconds between scans while the van stands, 1 to 60; default 10. Not under <c>ScanSeconds</c>. A parked tank
    /// changes slowly and a Pi on the leisure battery should not work for nothing.
    /// </summary>
    public double ParkedScanSeconds { get; set; } = 10;
}
