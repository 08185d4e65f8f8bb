using OnboardHeat.Core.Scans;

namespace OnboardHeat.Probes.OneWire;

/// <summary>
/// Looks at what hangs on the bus, known or not: for the start's first line, for <c>probes</c> and for <c>check</c>. As
/// patient as a scan, so that a bus that hangs is an answer too.
/// </summary>
public sealed class BusSurvey : IDisposable
{
    /// <summary>How long the list of the bus may take.</summary>
    public static readonly TimeSpan ListWithin = TimeSpan.FromSeconds(2);

    /// <summary>More than any van has; a list longer than this is a bus that talks nonsense.</summary>
    public const int RomsMax = 64;

    private readonly IProbeBus _bus;
    private readonly TimeProvider _time;
    private readonly PatientCall<IReadOnlyList<string>?> _list;
    private readonly Dictionary<string, PatientCall<Reading>> _reads = new(StringComparer.Ordinal);
    private readonly SemaphoreSlim _oneAtATime = new(1);

    internal BusSurvey(IProbeBus bus, TimeProvider time)
    {
        _bus = bus;
        _time = time;
        _list = new PatientCall<IReadOnlyList<string>?>("bus list", bus.ListRoms, ListWithin, time);
    }

    /// <summary>The bus of this machine.</summary>
    /// <param name="bus">
    /// Name of the bus master, an absolute path of a folder laid out like one, or null for all masters.
    /// </param>
    /// <param name="time">Clock of all timeouts.</param>
    public static BusSurvey OfThisMachine(string? bus, TimeProvider time) => new(KernelBuses.Of(bus), time);

    /// <summary>The addresses of what hangs on the bus; null when it does not answer in time.</summary>
    public async Task<IReadOnlyList<string>?> ListAsync(CancellationToken cancellationToken)
    {
        await _oneAtATime.WaitAsync(cancellationToken).ConfigureAwait(false);
        try
        {
            return (await _list.AskAsync(null).ConfigureAwait(false))?.Take(RomsMax).ToList();
        }
        finally
        {
            _oneAtATime.Release();
        }
    }

    /// <summary>Reads these addresses, all in parallel.</summary>
    public async Task<IReadOnlyList<SeenProbe>> ReadAsync(
        IReadOnlyCollection<string> roms, CancellationToken cancellationToken)
    {
        await _oneAtATime.WaitAsync(cancellationToken).ConfigureAwait(false);
        try
        {
            Forget(_reads.Keys.Except(roms).ToList());
            return await Task.WhenAll(roms.Distinct().Select(ReadAsync)).ConfigureAwait(false);
        }
        finally
        {
            _oneAtATime.Release();
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _list.Dispose();
        Forget([.. _reads.Keys]);
        _oneAtATime.Dispose();
    }

    private async Task<SeenProbe> ReadAsync(string rom)
    {
        if (!_reads.TryGetValue(rom, out var read))
        {
            _reads[rom] = read = new PatientCall<Reading>(
                $"survey {rom}", () => _bus.Read(rom), ProbeScanner.Patience, _time);
        }

        return new SeenProbe(rom, await read.AskAsync(Reading.None).ConfigureAwait(false));
    }

    private void Forget(IReadOnlyList<string> roms)
    {
        foreach (var rom in roms)
        {
            _reads.Remove(rom, out var read);
            read?.Dispose();
        }
    }
}
