namespace OnboardHeat.Glance.Api;

/// <summary>One line of a chart: times in Unix seconds, and what the column did in each span, in its unit.</summary>
internal sealed record ChartLineAnswer(string Column, long[] T, double[] Min, double[] Mean, double[] Max);
