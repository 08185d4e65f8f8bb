using System.Collections.Concurrent;
using OnboardHeat.Core.Scans;
using OnboardHeat.Probes.OneWire;

namespace OnboardHeat.Adapters.Tests.Probes;

/// <summary>A bus without files: gives what it was told to, hangs on demand.</summary>
internal sealed class FakeBus : IProbeBus
{
    private readonly ConcurrentDictionary<string, Reading> _readings = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, ManualResetEventSlim> _hung = new(StringComparer.Ordinal);
    private int _measured;

    public bool CanMeasureAll { get; set; }

    public int Measured => Volatile.Read(ref _measured);

    public ConcurrentQueue<string> Reads { get; } = new();

    public void Set(string rom, Reading reading) => _readings[rom] = reading;

    public void Unplug(string rom) => _readings.TryRemove(rom, out _);

    public bool IsHung => !_hung.IsEmpty;

    public void Hang(string rom) => _hung[rom] = new ManualResetEventSlim();

    public void Release(string rom)
    {
        if (_hung.TryRemove(rom, out var hung))
        {
            hung.Set();
        }
    }

    public IReadOnlyList<string> ListRoms() => [.. _readings.Keys.Order(StringComparer.Ordinal)];

    public bool TryMeasureAll()
    {
        Interlocked.Increment(ref _measured);
        return CanMeasureAll;
    }

    public Reading Read(string rom)
    {
        Reads.Enqueue(rom);
        if (_hung.TryGetValue(rom, out var hung))
        {
            hung.Wait();
        }

        return _readings.TryGetValue(rom, out var reading) ? reading : Reading.None;
    }
}
