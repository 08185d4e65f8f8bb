namespace OnboardHeat.Engine.Keeping;

/// <summary>
/// What is kept of the probe on one channel. Another ROM on the channel is another probe: its offset starts anew.
/// </summary>
/// <param name="Channel">Name of the channel.</param>
/// <param name="Rom">Address of the probe that was there.</param>
/// <param name="OffsetKelvin">
/// What a pair check found must be added to its reading; signed kelvin. The owner's own offset comes on top.
/// </param>
public sealed record KeptProbe(string Channel, string Rom, double OffsetKelvin);
