using OnboardHeat.Core.Scans;

namespace OnboardHeat.Probes.OneWire;

/// <summary>
/// Reads all fitted probes of a scan within about a second: one common measurement where the bus allows it, else all in
/// parallel (probes with a supply wire measure at the same time when asked from different threads). A probe that does
/// not answer is Missing and holds up no other.
/// </summary>
internal sealed class ProbeScanner : IDisposable
{
    /// <summary>
    /// A measurement takes up to 750 ms (maker's data sheet), a doubted value needs two, and the bus is shared.
    /// </summary>
    public static readonly TimeSpan Patience = TimeSpan.FromSeconds(2.5);

    /// <summary>A bus that could not measure all at once is asked again this often: rights and probes change.</summary>
    public static readonly TimeSpan BulkRetryEvery = TimeSpan.FromMinutes(10);

    /// <summary>Steps of 1/16 K stay exact, and the record stays small.</summary>
    private const int OffsetDecimals = 4;

    private readonly TimeProvider _time;
    private readonly Line[] _lines;
    private readonly Task<Reading>[] _answers;
    private readonly PatientCall<bool> _measureAll;
    private long? _bulkFailedAt;

    public ProbeScanner(IProbeBus bus, IReadOnlyList<ProbeFitting> probes, TimeProvider time)
    {
        _time = time;
        _measureAll = new PatientCall<bool>("bus trigger", bus.TryMeasureAll, Patience, time);
        _lines = [.. probes.Select(probe => new Line(probe.Channel, probe.OffsetKelvin, new PatientCall<Reading>(
            Channels.NameOf(probe.Channel), () => bus.Read(probe.Rom), Patience, time)))];
        _answers = new Task<Reading>[_lines.Length];
    }

    /// <summary>Fills in the readings. Ends within twice <see cref="Patience"/>.</summary>
    public async Task ReadAsync(Scan scan)
    {
        await MeasureAllAsync().ConfigureAwait(false);
        for (var i = 0; i < _lines.Length; i++)
        {
            _answers[i] = _lines[i].Call.AskAsync(Reading.None);
        }

        for (var i = 0; i < _lines.Length; i++)
        {
            var reading = await _answers[i].ConfigureAwait(false);
            var line = _lines[i];
            scan[line.Channel] = reading.HasValue
                ? Reading.Of(Math.Round(reading.Value + line.OffsetKelvin, OffsetDecimals))
                : reading;
        }
    }

    /// <summary>
    /// From the next scan on the probe at this place gets another offset: a pair check has learnt one.
    /// </summary>
    public void SetOffset(Channel channel, double offsetKelvin)
    {
        foreach (var line in _lines)
        {
            if (line.Channel == channel)
            {
                line.OffsetKelvin = offsetKelvin;
            }
        }
    }

    public void Dispose()
    {
        _measureAll.Dispose();
        foreach (var line in _lines)
        {
            line.Call.Dispose();
        }
    }

    private async Task MeasureAllAsync()
    {
        if (_lines.Length < 2 || (_bulkFailedAt is { } failedAt && _time.GetElapsedTime(failedAt) < BulkRetryEvery))
        {
            return;
        }

        var measured = await _measureAll.AskAsync(otherwise: false).ConfigureAwait(false);
        _bulkFailedAt = measured ? null : _time.GetTimestamp();
    }

    private sealed class Line(Channel channel, double offsetKelvin, PatientCall<Reading> call)
    {
        private double _offsetKelvin = offsetKelvin;

        public Channel Channel => channel;

        public PatientCall<Reading> Call => call;

        public double OffsetKelvin
        {
            get => Volatile.Read(ref _offsetKelvin);
            set => Volatile.Write(ref _offsetKelvin, value);
        }
    }
}
