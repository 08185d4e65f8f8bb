namespace OnboardHeat.Engine.Imports;

/// <summary>One row of a logger's file.</summary>
/// <param name="Line">Its line, from 1.</param>
/// <param name="Moment">Its time.</param>
/// <param name="Readings">What it says.</param>
internal sealed record ForeignRow(int Line, DateTimeOffset Moment, IReadOnlyList<ForeignReading> Readings);
