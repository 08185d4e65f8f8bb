namespace OnboardHeat.Core.Journeys;

/// <summary>What one source gave during a heating run.</summary>
/// <param name="Source">The source.</param>
/// <param name="GainedKWh">Stored heat gained while it heated, kilowatt-hours; losses not added back.</param>
/// <param name="Minutes">How long it was on, minutes; more than zero.</param>
public sealed record SourceHeat(HeatSource Source, double GainedKWh, double Minutes)
{
    /// <summary>Mean power while it was on, watts; losses not added back.</summary>
    public double MeanWatts => GainedKWh * 60_000 / Minutes;
}
