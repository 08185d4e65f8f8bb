using System.Device.Gpio;
using OnboardHeat.Core.Scans;

namespace OnboardHeat.Probes.Contacts;

/// <summary>
/// All contacts of the van. Without a GPIO chip, or the library for it, every signal is unknown and the chip is looked
/// for again.
/// </summary>
internal sealed class ContactBank(
    IReadOnlyList<ContactFitting> contacts, Func<GpioController> openController, Action onChange,
    TimeProvider time) : IDisposable
{
    /// <summary>How often a missing chip is looked for: it comes late at boot, if it comes.</summary>
    public static readonly TimeSpan RetryEvery = TimeSpan.FromSeconds(30);

    private GpioController? _controller;
    private ContactLine[] _lines = [];
    private long? _failedAt;

    /// <summary>Fills in the signals.</summary>
    public void Read(Scan scan)
    {
        if (contacts.Count == 0 || !IsOpen())
        {
            return;
        }

        for (var i = 0; i < _lines.Length; i++)
        {
            scan[contacts[i].Signal] = _lines[i].Read();
        }
    }

    public void Dispose()
    {
        foreach (var line in _lines)
        {
            line.Dispose();
        }

        _controller?.Dispose();
    }

    private bool IsOpen()
    {
        if (_controller is not null)
        {
            return true;
        }

        if (_failedAt is { } failedAt && time.GetElapsedTime(failedAt) < RetryEvery)
        {
            return false;
        }

        try
        {
            _controller = openController();
        }
        catch (Exception fault) when (IsOfTheChip(fault))
        {
            _failedAt = time.GetTimestamp();
            return false;
        }

        _lines = [.. contacts.Select(contact => new ContactLine(contact, _controller, onChange, time))];
        return true;
    }

    private static bool IsOfTheChip(Exception fault) =>
        fault is IOException or UnauthorizedAccessException
            or InvalidOperationException or NotSupportedException or ArgumentException
            or DllNotFoundException or EntryPointNotFoundException or TypeInitializationException;
}
