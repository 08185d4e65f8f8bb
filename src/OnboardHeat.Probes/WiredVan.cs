using System.Device.Gpio;
using OnboardHeat.Core.Scans;
using OnboardHeat.Engine.Judging;
using OnboardHeat.Engine.Ports;
using OnboardHeat.Probes.Contacts;
using OnboardHeat.Probes.OneWire;

namespace OnboardHeat.Probes;

/// <summary>The van's own wires as a source of scans: 1-Wire probes and contacts on GPIO lines.</summary>
public sealed class WiredVan : IScanSource, IDisposable
{
    private readonly ProbeScanner _probes;
    private readonly ContactBank _contacts;

    internal WiredVan(
        IProbeBus bus, IReadOnlyList<ProbeFitting> probes, IReadOnlyList<ContactFitting> contacts,
        Func<GpioController> openController, LoopWake wake, TimeProvider time)
    {
        _probes = new ProbeScanner(bus, probes, time);
        // A contact that changes is judged now: an engine that starts ends the slow pace of a parked van.
        _contacts = new ContactBank(contacts, openController, wake.CallForScan, time);
    }

    /// <summary>The wires of this machine.</summary>
    /// <param name="bus">
    /// Name of the 1-Wire bus master, an absolute path of a folder laid out like one, or null for all masters.
    /// </param>
    /// <param name="probes">The probes fitted.</param>
    /// <param name="contacts">The contacts wired.</param>
    /// <param name="openController">
    /// Opens the GPIO chip; may throw what the library throws on a machine without one.
    /// </param>
    /// <param name="wake">Woken when a contact changes.</param>
    /// <param name="time">Clock of all timeouts.</param>
    public static WiredVan OfThisMachine(
        string? bus, IReadOnlyList<ProbeFitting> probes, IReadOnlyList<ContactFitting> contacts,
        Func<GpioController> openController, LoopWake wake, TimeProvider time) =>
        new(KernelBuses.Of(bus), probes, contacts, openController, wake, time);

    /// <inheritdoc/>
    public async Task ReadAsync(Scan scan, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(scan);
        _contacts.Read(scan);
        await _probes.ReadAsync(scan).ConfigureAwait(false);
    }

    /// <summary>
    /// From the next scan on this much is added to what the probe at that place reads; signed kelvin, owner's and
    /// learnt together.
    /// </summary>
    public void SetOffset(Channel channel, double offsetKelvin) => _probes.SetOffset(channel, offsetKelvin);

    /// <inheritdoc/>
    public void Dispose()
    {
        _probes.Dispose();
        _contacts.Dispose();
    }
}
