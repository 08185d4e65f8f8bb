using OnboardHeat.Core.Journeys;
using OnboardHeat.Core.Scans;
using OnboardHeat.Engine.Ports;

namespace OnboardHeat.Engine.Review;

/// <summary>
/// Answers 'is the insulation better?' from the record. The nights before and after a change mark are taken as far as
/// the next mark of something that changes how fast the tank cools, so that only one thing differs. Order is by run and
/// elapsed time: nights whose run has no trusted date count as well.
/// </summary>
public sealed class InsulationReview(JourneyBook book, IRecordReader record)
{
    /// <summary>
    /// How far it looks on either side of the mark: a season; weather and habits differ enough within it.
    /// </summary>
    private static readonly TimeSpan s_farthest = TimeSpan.FromDays(90);

    /// <summary>Marks this close together belong to one day's work.</summary>
    private static readonly TimeSpan s_oneWork = TimeSpan.FromHours(24);

    private static readonly string[] s_changeCooling = ["insulation", "hoses", "coil", "probe"];

    /// <summary>Change marks that the record holds between two dates, oldest first.</summary>
    public async Task<IReadOnlyList<RecordedEvent>> MarksAsync(DateTimeOffset from, DateTimeOffset to,
        CancellationToken cancellationToken)
    {
        var marks = new List<RecordedEvent>();
        await foreach (var recorded in record.ReadEventsAsync(from, to, cancellationToken).ConfigureAwait(false))
        {
            if (recorded.Kind == "mark" && recorded.Name == PersonAction.NameOf(ActionKind.Changed))
            {
                marks.Add(recorded);
            }
        }

        return marks;
    }

    /// <summary>The answer for a change mark that has a date.</summary>
    public async Task<ReviewedInsulation> AnswerAsync(RecordedEvent mark, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(mark);
        var at = mark.Utc ?? throw new ArgumentException("The mark has no date.", nameof(mark));
        var others = (await MarksAsync(at - s_farthest, at + s_farthest, cancellationToken).ConfigureAwait(false))
            .Where(other => s_changeCooling.Contains(other.State.Split('/')[0])).ToList();
        var from = others.Where(other => other.Utc < at - s_oneWork).Max(other => other.Utc) ?? (at - s_farthest);
        var to = others.Where(other => other.Utc > at + s_oneWork).Min(other => other.Utc) ?? (at + s_farthest);
        var journeys = await book.ReadAsync(from, to, cancellationToken).ConfigureAwait(false);
        var whole = journeys.Where(one => !one.IsOpen && (one.From is null || one.From >= from)
            && (one.To is null || one.To <= to)).ToList();
        var answer = InsulationComparison.Of(
            whole.Select(one => one.Journey).Where(night => IsBefore(night, mark)),
            whole.Select(one => one.Journey).Where(night => IsAfter(night, mark)));
        return new ReviewedInsulation(
            mark,
            answer,
            [.. whole.Where(one => answer.Before.Contains(one.Journey))],
            [.. whole.Where(one => answer.After.Contains(one.Journey))],
            [.. answer.LeftOut.Select(left =>
            (whole.First(one => ReferenceEquals(one.Journey, left.Night)), left.IsAfter, left.Why))]);
    }

    private static bool IsBefore(Journey night, RecordedEvent mark) =>
        night.Run < mark.Run || (night.Run == mark.Run && night.ToS <= mark.Elapsed.TotalSeconds);

    private static bool IsAfter(Journey night, RecordedEvent mark) =>
        night.Run > mark.Run || (night.Run == mark.Run && night.FromS >= mark.Elapsed.TotalSeconds);
}
