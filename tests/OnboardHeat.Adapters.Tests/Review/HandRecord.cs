using OnboardHeat.Core.Scans;
using OnboardHeat.Engine.Ports;

namespace OnboardHeat.Adapters.Tests.Review;

/// <summary>A record that a test fills by hand. One run unless told otherwise, dated by a trusted clock.</summary>
internal sealed class HandRecord : IRecordReader
{
    public static DateTimeOffset Start { get; } = new(2026, 5, 23, 6, 0, 0, TimeSpan.Zero);

    public List<Scan> Scans { get; } = [];

    public List<RecordedEvent> Events { get; } = [];

    public List<RecordedFigures> Figures { get; } = [];

    public List<RecordedRun> Runs { get; } = [];

    /// <summary>A run of so many hours, so many days after the start.</summary>
    public HandRecord Run(int run, double afterDays, double hours, RunDating dating = RunDating.Trusted)
    {
        var from = Start.AddDays(afterDays);
        Runs.Add(new RecordedRun(run, TimeSpan.Zero, TimeSpan.FromHours(hours), from, from.AddHours(hours), dating));
        return this;
    }

    /// <summary>Something that happened in a run.</summary>
    public HandRecord Event(int run, double elapsedS, string kind, string name, string state, string text)
    {
        var elapsed = TimeSpan.FromSeconds(elapsedS);
        Events.Add(new RecordedEvent(run, elapsed, Runs.First(one => one.Run == run).From + elapsed, kind, name, state,
            text));
        return this;
    }

    /// <summary>A scan of both tank probes, surroundings, flow and engine.</summary>
    public HandRecord Scan(int run, double elapsedS, double tankCelsius, double aroundCelsius, double flowCelsius = 15,
        bool isEngineOn = false)
    {
        var elapsed = TimeSpan.FromSeconds(elapsedS);
        var scan = new Scan
        {
            Run = run, Elapsed = elapsed, Utc = Runs.First(one => one.Run == run).From + elapsed, IsUtcTrusted = true,
        };
        scan[Channel.TankTop] = scan[Channel.TankBottom] = Reading.Of(tankCelsius);
        scan[Channel.Surroundings] = Reading.Of(aroundCelsius);
        scan[Channel.Flow] = Reading.Of(flowCelsius);
        scan[Signal.EngineRunning] = isEngineOn;
        Scans.Add(scan);
        return this;
    }

    public IAsyncEnumerable<Scan> ReadScansAsync(DateTimeOffset from, DateTimeOffset to,
        CancellationToken cancellationToken) =>
        Given(Scans.Where(scan => scan.Utc >= from && scan.Utc <= to));

    public IAsyncEnumerable<Scan> ReadRunScansAsync(int firstRun, int lastRun, CancellationToken cancellationToken) =>
        Given(Scans.Where(scan => scan.Run >= firstRun && scan.Run <= lastRun));

    public IAsyncEnumerable<RecordedEvent> ReadEventsAsync(DateTimeOffset from, DateTimeOffset to,
        CancellationToken cancellationToken) =>
        Given(Events.Where(one => (one.Utc ?? DateTimeOffset.MinValue) >= from
            && (one.Utc ?? DateTimeOffset.MinValue) <= to));

    public IAsyncEnumerable<RecordedFigures> ReadFiguresAsync(DateTimeOffset from, DateTimeOffset to,
        CancellationToken cancellationToken) =>
        Given(Figures.Where(one => one.Utc >= from && one.Utc <= to));

    public ValueTask<IReadOnlyList<RecordedRun>> ReadRunsAsync(CancellationToken cancellationToken) => new(Runs);

    public ValueTask<IReadOnlyList<ChartLine>> ReadChartAsync(
        IReadOnlyList<string> columns, DateTimeOffset from, DateTimeOffset to, int points,
        CancellationToken cancellationToken) =>
        new([.. columns.Select(column => new ChartLine(column, Points(column, from, to)))]);

    public ValueTask<IReadOnlyList<RecordedMonth>> ReadMonthsAsync(CancellationToken cancellationToken) => new([]);

    private List<ChartPoint> Points(string column, DateTimeOffset from, DateTimeOffset to) =>
        !Channels.TryParse(column, out var channel) ? [] :
    [
        .. Scans.Where(scan => scan[channel].HasValue && scan.Utc >= from && scan.Utc <= to)
            .Select(scan =>
                new ChartPoint(scan.Utc!.Value, scan[channel].Value, scan[channel].Value, scan[channel].Value)),
    ];

    private static async IAsyncEnumerable<T> Given<T>(IEnumerable<T> all)
    {
        await Task.CompletedTask;
        foreach (var one in all)
        {
            yield return one;
        }
    }
}
