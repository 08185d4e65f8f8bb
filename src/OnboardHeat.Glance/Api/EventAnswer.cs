namespace OnboardHeat.Glance.Api;

/// <summary>Something that happened. Time is null where the run is undated.</summary>
internal sealed record EventAnswer(
    int Run, double ElapsedS, string? Time, string Kind, string Name, string State, string Text);
