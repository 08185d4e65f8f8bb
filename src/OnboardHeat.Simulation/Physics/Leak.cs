namespace OnboardHeat.Simulation.Physics;

/// <summary>Where coolant gets out, and how.</summary>
/// <param name="At">The joint.</param>
/// <param name="IsOff">The hose is off: everything comes out there and nothing goes on.</param>
/// <param name="ShareOfFlow">Of a split: share of the flow that gets out.</param>
/// <param name="LitresPerMinute">Of a weep: what gets out under pressure, whatever flows.</param>
internal sealed record Leak(Joint At, bool IsOff, double ShareOfFlow, double LitresPerMinute);
