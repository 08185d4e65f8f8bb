namespace OnboardHeat.Engine.Options;

/// <summary>One temperature probe.</summary>
public sealed class ProbeOptions
{
    /// <summary>Where it sits, for example <c>tank_top</c>; required.</summary>
    public string Channel { get; set; } = "";

    /// <summary>
    /// Its number as the kernel writes it, <c>28-</c> and twelve hex digits in lower case; required. <c>onboardheat
    /// probes</c> lists them.
    /// </summary>
    public string Rom { get; set; } = "";

    /// <summary>
    /// Kelvin added to what it reads, -5 to 5; default 0. For a probe that was compared in ice water.
    /// </summary>
    public double OffsetKelvin { get; set; }
}
