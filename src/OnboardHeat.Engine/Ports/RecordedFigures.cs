namespace OnboardHeat.Engine.Ports;

/// <summary>What the picture said at one moment.</summary>
/// <param name="Run">Run number.</param>
/// <param name="Elapsed">Time since the run began.</param>
/// <param name="Utc">Date; null while the run has none.</param>
/// <param name="Values">One value for each of <see cref="FigureNames.All"/>; null where it was not known.</param>
public sealed record RecordedFigures(int Run, TimeSpan Elapsed, DateTimeOffset? Utc, IReadOnlyList<double?> Values)
{
    /// <summary>The figure of that name.</summary>
    public double? this[string name]
    {
        get
        {
            for (var i = 0; i < FigureNames.All.Count; i++)
            {
                if (FigureNames.All[i] == name)
                {
                    return Values[i];
                }
            }

            return null;
        }
    }
}
