using OnboardHeat.Core.Scans;

namespace OnboardHeat.Probes.OneWire;

/// <summary>
/// A 1-Wire bus as the scanner needs it. Every call may block for as long as the kernel pleases, or for ever: the
/// scanner makes them from threads it can do without. No call throws for what a bus can do: faults are named.
/// </summary>
internal interface IProbeBus
{
    /// <summary>
    /// The addresses of what hangs on the bus, as the kernel writes them (<c>28-0316a279ddff</c>); empty without a bus.
    /// </summary>
    IReadOnlyList<string> ListRoms();

    /// <summary>
    /// Makes all probes measure at once, so that the reads after it only fetch. False where the kernel or the rights do
    /// not allow it: then each read measures for itself. True is no proof that every probe heard it.
    /// </summary>
    bool TryMeasureAll();

    /// <summary>Reads one probe, in degrees Celsius without any offset, or the reason why not.</summary>
    Reading Read(string rom);
}
