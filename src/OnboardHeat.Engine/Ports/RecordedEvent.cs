namespace OnboardHeat.Engine.Ports;

/// <summary>Something that happened, as the record holds it.</summary>
/// <param name="Run">Run number.</param>
/// <param name="Elapsed">Time since the run began.</param>
/// <param name="Utc">Wall-clock label; null while the run is undated.</param>
/// <param name="Kind"><c>alarm</c>, <c>action</c>, <c>mark</c> or <c>journey</c>.</param>
/// <param name="Name">
/// Name of the alarm with its subject (<c>rating-near/hose</c>), of the action, or type of the journey.
/// </param>
/// <param name="State">For an alarm <c>raised</c> or <c>cleared</c>; else the action's target.</param>
/// <param name="Text">The sentence, the note, or the journey as JSON.</param>
public sealed record RecordedEvent(int Run, TimeSpan Elapsed, DateTimeOffset? Utc, string Kind, string Name,
    string State, string Text)
{
    /// <summary>Kind of an event that holds a journey.</summary>
    public const string JourneyKind = "journey";
}
