using OnboardHeat.Core.Scans;

namespace OnboardHeat.Engine.Ports;

/// <summary>Reads the record back. History implements it; pages, reports and exports read through it.</summary>
public interface IRecordReader
{
    /// <summary>Scans between two wall-clock labels (both included), ordered by run and elapsed time.</summary>
    IAsyncEnumerable<Scan> ReadScansAsync(DateTimeOffset from, DateTimeOffset to, CancellationToken cancellationToken);

    /// <summary>Alarm changes, actions and change marks between two labels, ordered by run and elapsed time.</summary>
    IAsyncEnumerable<RecordedEvent> ReadEventsAsync(DateTimeOffset from, DateTimeOffset to, CancellationToken cancellationToken);
}
