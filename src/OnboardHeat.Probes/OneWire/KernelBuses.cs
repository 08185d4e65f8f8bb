using Iot.Device.OneWire;
using OnboardHeat.Core.Scans;

namespace OnboardHeat.Probes.OneWire;

/// <summary>
/// Every bus master of this machine as one bus, for owners who name none. Masters that come or go are seen at the next
/// look.
/// </summary>
internal sealed class KernelBuses : IProbeBus
{
    private KernelBus[] _masters = [];

    /// <summary>One master by name or folder, or all there are.</summary>
    public static IProbeBus Of(string? bus) => bus is null ? new KernelBuses() : new KernelBus(bus);

    public IReadOnlyList<string> ListRoms()
    {
        _masters = [.. NamesOfMasters().Select(name => new KernelBus(name))];
        return [.. _masters.SelectMany(master => master.ListRoms()).Distinct(StringComparer.Ordinal)];
    }

    public bool TryMeasureAll()
    {
        var masters = Masters();
        var measured = masters.Length > 0;
        foreach (var master in masters)
        {
            measured &= master.TryMeasureAll();
        }

        return measured;
    }

    public Reading Read(string rom)
    {
        foreach (var master in Masters())
        {
            if (master.Has(rom))
            {
                return master.Read(rom);
            }
        }

        // Unplugged, or on a master that was not there before: the next look goes over all of them anew.
        _masters = [];
        return Reading.None;
    }

    private KernelBus[] Masters()
    {
        var masters = _masters;
        return masters.Length > 0 ? masters : _masters = [.. NamesOfMasters().Select(name => new KernelBus(name))];
    }

    private static List<string> NamesOfMasters()
    {
        try
        {
            return [.. OneWireBus.EnumerateBusIds().Order(StringComparer.Ordinal)];
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return [];
        }
    }
}
