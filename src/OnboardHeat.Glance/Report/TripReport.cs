using System.Text;
using OnboardHeat.Core;
using OnboardHeat.Core.Scans;
using OnboardHeat.Engine.Ports;
using OnboardHeat.Engine.Review;

namespace OnboardHeat.Glance.Report;

/// <summary>Makes the report of a trip from the record: one HTML file that needs nothing else.</summary>
public sealed class TripReport(IRecordReader record, VanDescription van, string vanId, TimeProvider time)
{
    /// <summary>Points of a chart: finer than a printer shows on a page's width.</summary>
    private const int Points = 700;

    /// <summary>A trip, when nothing is said: the last week on record.</summary>
    private static readonly TimeSpan s_usual = TimeSpan.FromDays(7);

    /// <summary>More happens only where an alarm chatters; the newest count then.</summary>
    private const int MostEvents = 2000;

    /// <summary>Writes it; false where nothing is on record in that span.</summary>
    public async Task<bool> WriteAsync(ReportRequest request, Stream to, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(to);
        if (await ReadAsync(request, cancellationToken).ConfigureAwait(false) is not { } content)
        {
            return false;
        }

        var clock = new ReportClock(content.From, time.LocalTimeZone, content.IsShared);
        var html = new ReportPage(content, clock, van).Write();
        await to.WriteAsync(Encoding.UTF8.GetBytes(html), cancellationToken).ConfigureAwait(false);
        return true;
    }

    private async Task<ReportContent?> ReadAsync(ReportRequest request, CancellationToken cancellationToken)
    {
        var runs = await record.ReadRunsAsync(cancellationToken).ConfigureAwait(false);
        var dated = runs.Where(run => run is { From: not null, To: not null }).ToList();
        if (dated.Count == 0)
        {
            return null;
        }

        var end = request.To ?? dated.Max(run => run.To!.Value);
        var from = request.From ?? (end - s_usual);
        var first = dated.Where(run => run.To >= from && run.From <= end).Min(run => run.From);
        var last = dated.Where(run => run.To >= from && run.From <= end).Max(run => run.To);
        if (first is null || last is null || end <= from)
        {
            return null;
        }

        // Days on which nothing was recorded, before and after, say nothing.
        (from, end) = (from < first ? first.Value : from, end > last ? last.Value : end);
        end = end <= from ? from.AddMinutes(1) : end;
        var book = new JourneyBook(record, van);
        return new ReportContent
        {
            VanId = vanId,
            From = from,
            To = end,
            IsShared = request.IsShared,
            Journeys = await book.ReadAsync(from, end, cancellationToken).ConfigureAwait(false),
            Lines = await record.ReadChartAsync(Columns(), from, end, Points, cancellationToken).ConfigureAwait(false),
            Events = await EventsAsync(from, end, cancellationToken).ConfigureAwait(false),
            Undated = [.. dated.Where(run => run.Dating == RunDating.Undated && run.To >= from && run.From <= end)],
            Insulation = await InsulationAsync(book, from, end, cancellationToken).ConfigureAwait(false),
        };
    }

    private static List<string> Columns() =>
        [.. Channels.All.ToArray().Select(Channels.NameOf), FigureNames.StoredEnergyKWh, FigureNames.ShowerMinutes,
            FigureNames.HeatingWatts];

    private async Task<IReadOnlyList<RecordedEvent>> EventsAsync(DateTimeOffset from, DateTimeOffset to,
        CancellationToken cancellationToken)
    {
        var events = new List<RecordedEvent>();
        await foreach (var one in record.ReadEventsAsync(from, to, cancellationToken).ConfigureAwait(false))
        {
            if (one.Kind != RecordedEvent.JourneyKind)
            {
                events.Add(one);
            }
        }

        return events.Count > MostEvents ? events[^MostEvents..] : events;
    }

    private async Task<ReviewedInsulation?> InsulationAsync(
        JourneyBook book, DateTimeOffset from, DateTimeOffset to, CancellationToken cancellationToken)
    {
        var review = new InsulationReview(book, record);
        var marks = await review.MarksAsync(from, to, cancellationToken).ConfigureAwait(false);
        return marks.LastOrDefault(mark => mark.State == "insulation") is { Utc: not null } mark
            ? await review.AnswerAsync(mark, cancellationToken).ConfigureAwait(false)
            : null;
    }
}
