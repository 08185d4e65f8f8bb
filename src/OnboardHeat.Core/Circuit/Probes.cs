namespace OnboardHeat.Core.Circuit;

/// <summary>What the circuit's signs take for granted of a thermometer.</summary>
internal static class Probes
{
    /// <summary>
    /// Scatter of one reading in kelvin: 0.018 K of 1/16 K steps (1/(16 sqrt 12)) and what bus and mounting add;
    /// recorded probes show 0.025 to 0.045 K from one reading to the next.
    /// </summary>
    public const double NoiseK = 0.04;
}
