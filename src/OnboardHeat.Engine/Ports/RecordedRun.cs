namespace OnboardHeat.Engine.Ports;

/// <summary>One run of the daemon, as the record knows it.</summary>
/// <param name="Run">Its number.</param>
/// <param name="FirstElapsed">Elapsed time of its oldest scan on record.</param>
/// <param name="LastElapsed">Elapsed time of its newest scan on record.</param>
/// <param name="From">Date of the oldest scan; null where not even a claim is there.</param>
/// <param name="To">Date of the newest scan; null likewise.</param>
/// <param name="Dating">How far these dates can be believed.</param>
public sealed record RecordedRun(
    int Run, TimeSpan FirstElapsed, TimeSpan LastElapsed, DateTimeOffset? From, DateTimeOffset? To, RunDating Dating);
