using OnboardHeat.Core.Scans;

namespace OnboardHeat.Engine.Ports;

/// <summary>
/// Reads the record back. History implements it; pages, reports and exports read through it. Order is always by run and
/// elapsed time. A run that had a trusted clock at any time is dated by it throughout; one that never had is dated by
/// what its clock claimed, and <see cref="RecordedRun.Dating"/> says so. Reading never holds up recording for longer
/// than one block.
/// </summary>
public interface IRecordReader
{
    /// <summary>Scans exactly as they were given to the Monitor, between two dates (both included).</summary>
    IAsyncEnumerable<Scan> ReadScansAsync(DateTimeOffset from, DateTimeOffset to, CancellationToken cancellationToken);

    /// <summary>Scans exactly as they were given to the Monitor, of whole runs (both numbers included).</summary>
    IAsyncEnumerable<Scan> ReadRunScansAsync(int firstRun, int lastRun, CancellationToken cancellationToken);

    /// <summary>Alarm changes, actions and change marks between two dates.</summary>
    IAsyncEnumerable<RecordedEvent> ReadEventsAsync(
        DateTimeOffset from, DateTimeOffset to, CancellationToken cancellationToken);

    /// <summary>
    /// What the picture said, at a lower rate than scans (a minute apart driving, ten minutes parked).
    /// </summary>
    IAsyncEnumerable<RecordedFigures> ReadFiguresAsync(
        DateTimeOffset from, DateTimeOffset to, CancellationToken cancellationToken);

    /// <summary>Every run that the record knows of.</summary>
    ValueTask<IReadOnlyList<RecordedRun>> ReadRunsAsync(CancellationToken cancellationToken);

    /// <summary>
    /// Lines of a chart, drawn from roll-ups where the span is long. Columns that hold nothing give an empty line.
    /// </summary>
    /// <param name="columns">
    /// Names of channels (<c>tank_top</c>) and of figures (see <see cref="FigureNames"/>).
    /// </param>
    /// <param name="from">Left edge.</param>
    /// <param name="to">Right edge.</param>
    /// <param name="points">How many points wide; 2 to 10,000.</param>
    /// <param name="cancellationToken">Ends the reading.</param>
    ValueTask<IReadOnlyList<ChartLine>> ReadChartAsync(
        IReadOnlyList<string> columns, DateTimeOffset from, DateTimeOffset to, int points,
        CancellationToken cancellationToken);

    /// <summary>The files of the record, oldest first.</summary>
    ValueTask<IReadOnlyList<RecordedMonth>> ReadMonthsAsync(CancellationToken cancellationToken);
}
