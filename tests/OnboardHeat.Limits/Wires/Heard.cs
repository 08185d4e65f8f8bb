namespace OnboardHeat.Limits.Wires;

/// <summary>One message as mosquitto_sub printed it.</summary>
/// <param name="At">When it was received, Unix time in seconds.</param>
/// <param name="Topic">Its topic.</param>
/// <param name="Payload">What it says.</param>
internal sealed record Heard(double At, string Topic, string Payload);
