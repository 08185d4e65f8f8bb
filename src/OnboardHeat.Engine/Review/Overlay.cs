using OnboardHeat.Core;
using OnboardHeat.Core.Journeys;
using OnboardHeat.Engine.Ports;

namespace OnboardHeat.Engine.Review;

/// <summary>
/// Two spans laid over each other from their own start, the second on the footing of the first: the same start and the
/// same surroundings.
/// </summary>
public sealed record Overlay
{
    /// <summary>
    /// What a van of this kind has where nothing was learnt, watts per kelvin (common practice, no source): loss of a
    /// lagged tank of some 20 litres, and its coil.
    /// </summary>
    private const double UsualLossWPerK = 0.8, UsualCoilWPerK = 50;

    /// <summary>The first course; its start and mean surroundings are the common footing.</summary>
    public required OverlaidCourse First { get; init; }

    /// <summary>The second.</summary>
    public required OverlaidCourse Second { get; init; }

    /// <summary>Start of both, degrees Celsius.</summary>
    public required double StartCelsius { get; init; }

    /// <summary>
    /// Surroundings of both, degrees Celsius; null where the first had no such probe: then only the start is the same.
    /// </summary>
    public double? SurroundingsCelsius { get; init; }

    /// <summary>Reads two spans; null where one of them has nothing on record.</summary>
    public static async Task<Overlay?> ReadAsync(
        ReviewSpan first, ReviewSpan second, IRecordReader record, VanDescription van,
        CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(van);
        var one = await CourseReading.ReadAsync(first, record, cancellationToken).ConfigureAwait(false);
        var other = await CourseReading.ReadAsync(second, record, cancellationToken).ConfigureAwait(false);
        if (one.Count == 0 || other.Count == 0)
        {
            return null;
        }

        var startCelsius = one[0].WaterCelsius;
        var around = one.Where(point => point.SurroundingsCelsius is not null).ToList();
        double? surroundingsCelsius = around.Count > 0 ? around.Average(point => point.SurroundingsCelsius!.Value)
            : null;
        async Task<OverlaidCourse> PutAsync(ReviewSpan span, IReadOnlyList<CoursePoint> course)
        {
            var (lossWPerK, coilWPerK) = await ConductancesAsync(span, record, cancellationToken).ConfigureAwait(false);
            var put = LikeForLike.Put(course, startCelsius, surroundingsCelsius, lossWPerK, coilWPerK,
                van.Tank.HeatJPerK);
            return new OverlaidCourse(course, put, lossWPerK, coilWPerK);
        }

        return new Overlay
        {
            First = await PutAsync(first, one).ConfigureAwait(false),
            Second = await PutAsync(second, other).ConfigureAwait(false),
            StartCelsius = startCelsius,
            SurroundingsCelsius = surroundingsCelsius,
        };
    }

    /// <summary>
    /// What was learnt of the tank at that time: a journey's own figures where one lies in the span, else those of the
    /// record.
    /// </summary>
    private static async Task<(double LossWPerK, double CoilWPerK)> ConductancesAsync(
        ReviewSpan span, IRecordReader record, CancellationToken cancellationToken)
    {
        var (from, to) = await DatesAsync(span, record, cancellationToken).ConfigureAwait(false);
        double? loss = null, coil = null, figure = null;
        await foreach (var recorded in record.ReadEventsAsync(from, to, cancellationToken).ConfigureAwait(false))
        {
            if (JourneyJson.Read(recorded) is { } journey && (span.Run is not { } run || journey.Run == run))
            {
                loss = journey.LossWPerK?.Value ?? loss;
                coil = journey.CoilWPerK ?? coil;
            }
        }

        await foreach (var figures in record.ReadFiguresAsync(from, to, cancellationToken).ConfigureAwait(false))
        {
            figure = figures[FigureNames.LossCoefficientWPerK] ?? figure;
        }

        return (loss ?? figure ?? UsualLossWPerK, coil ?? UsualCoilWPerK);
    }

    private static async Task<(DateTimeOffset From, DateTimeOffset To)> DatesAsync(
        ReviewSpan span, IRecordReader record, CancellationToken cancellationToken)
    {
        // A journey is kept a little after its end.
        var late = TimeSpan.FromMinutes(10);
        if (span.Run is not { } run)
        {
            return (span.From, span.To + late);
        }

        var runs = await record.ReadRunsAsync(cancellationToken).ConfigureAwait(false);
        return runs.FirstOrDefault(one => one.Run == run) is { To: { } end } dated
            ? (end.AddSeconds(span.FromS - dated.LastElapsed.TotalSeconds),
                end.AddSeconds(span.ToS - dated.LastElapsed.TotalSeconds) + late)
            : (DateTimeOffset.MinValue, DateTimeOffset.MinValue);
    }
}
