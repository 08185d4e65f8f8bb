using Iot.Device.OneWire;
using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Screening;

namespace OnboardHeat.Probes.OneWire;

/// <summary>
/// The bus through the kernel's files and Iot.Device.Bindings. The library gives the list and the temperatures; it
/// hides the bytes, and reading the file again makes the probe measure again. So the bytes are asked for only where
/// they can overturn what the library said: at the two values a probe reports without having measured, and when it
/// threw.
/// </summary>
internal sealed class KernelBus : IProbeBus
{
    /// <summary>What a probe holds from power-on until it has measured (maker's data sheet).</summary>
    private const double PowerOnC = 85;

    /// <summary>
    /// The end of the probe's range (maker's data sheet). A conversion that had too little current leaves 127.94 °C
    /// behind.
    /// </summary>
    private const double HighestC = 125;

    /// <summary>What nine zero bytes mean, whose checksum fits: the bus is held low.</summary>
    private const double AllZeroC = 0;

    /// <summary>
    /// Two measurements less than a second apart of a real coolant line at such a value differ by less than this.
    /// </summary>
    private const double SameC = 0.5;

    private static readonly byte[] s_trigger = "trigger\n"u8.ToArray();

    private readonly string _folder;
    private readonly string _busId;

    /// <param name="bus">
    /// Name of a bus master (<c>w1_bus_master1</c>), or the absolute path of a folder laid out like one.
    /// </param>
    public KernelBus(string bus)
    {
        _busId = bus;
        _folder = Path.Combine("/sys/devices", bus);
    }

    /// <summary>Whether the kernel shows this probe on this bus.</summary>
    public bool Has(string rom) => RomAddress.IsWellFormed(rom) && Directory.Exists(Path.Combine(_folder, rom));

    public IReadOnlyList<string> ListRoms()
    {
        try
        {
            return [.. new OneWireBus(_busId).EnumerateDeviceIds().Where(RomAddress.IsWellFormed)];
        }
        catch (Exception fault) when (IsOfTheBus(fault))
        {
            return [];
        }
    }

    public bool TryMeasureAll()
    {
        try
        {
            using var file = new FileStream(
                Path.Combine(_folder, "therm_bulk_read"), FileMode.Open, FileAccess.Write, FileShare.ReadWrite,
                bufferSize: 0);
            file.Write(s_trigger);
            return true;
        }
        catch (Exception fault) when (IsOfTheBus(fault))
        {
            return false;
        }
    }

    public Reading Read(string rom)
    {
        if (!RomAddress.IsWellFormed(rom))
        {
            return Reading.None;
        }

        double celsius;
        try
        {
            celsius = new OneWireThermometerDevice(_busId, rom).ReadTemperature().DegreesCelsius;
        }
        catch (Exception fault) when (IsOfTheBus(fault))
        {
            return JudgeBytes(rom) is { HasValue: false } named ? named : Reading.None;
        }

        if (!double.IsFinite(celsius))
        {
            return Reading.Failed(ReadingFault.OutOfRange);
        }

        return celsius switch
        {
            PowerOnC or > HighestC => Doubted(rom, celsius, ReadingFault.PowerOn),
            AllZeroC => Doubted(rom, celsius, ReadingFault.AllZero),
            _ => Reading.Of(celsius),
        };
    }

    /// <summary>
    /// The second look at a value that may be none. Another value now means that the first was none: a probe that lost
    /// its supply for a moment is to be told, not hidden behind the sound value that follows.
    /// </summary>
    private Reading Doubted(string rom, double celsius, ReadingFault suspicion)
    {
        if (RomAddress.FamilyOf(rom) != RomAddress.Ds18b20Family)
        {
            return Reading.Of(celsius);
        }

        var second = JudgeBytes(rom);
        return second.HasValue && Math.Abs(second.Value - celsius) > SameC ? Reading.Failed(suspicion) : second;
    }

    private Reading JudgeBytes(string rom)
    {
        try
        {
            var text = File.ReadAllText(Path.Combine(_folder, rom, "w1_slave"));
            Span<byte> scratchpad = stackalloc byte[Ds18b20Scratchpad.Length];
            return ScratchpadText.TryParse(text, scratchpad) ? Ds18b20Scratchpad.Decode(scratchpad) : Reading.None;
        }
        catch (Exception fault) when (IsOfTheBus(fault))
        {
            return Reading.None;
        }
    }

    /// <summary>
    /// What the library and the file system throw for a bus or a probe that is gone, half gone or garbled. Anything
    /// else is a bug. The library's own InvalidOperationException stands for a wrong checksum and an empty file alike.
    /// </summary>
    private static bool IsOfTheBus(Exception fault) =>
        fault is IOException or UnauthorizedAccessException
            or InvalidOperationException or ArgumentException or FormatException;
}
