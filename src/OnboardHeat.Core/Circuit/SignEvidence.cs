namespace OnboardHeat.Core.Circuit;

/// <summary>What one sign said when an alarm of the circuit was raised: kept for the review.</summary>
/// <param name="Sign">Name of the sign.</param>
/// <param name="IsHealthy">Whether its probes allowed it to speak.</param>
/// <param name="StoppedNats">
/// Log likelihood ratio for 'no coolant passes the coil', nats; negative speaks for running.
/// </param>
/// <param name="LeavingNats">
/// Log likelihood ratio for 'coolant is leaving', nats; negative speaks for full pipes.
/// </param>
/// <param name="Words">What it saw, in figures.</param>
public sealed record SignEvidence(string Sign, bool IsHealthy, double StoppedNats, double LeavingNats, string Words);
