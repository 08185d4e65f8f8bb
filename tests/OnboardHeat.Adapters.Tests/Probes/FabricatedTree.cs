using System.Diagnostics;

namespace OnboardHeat.Adapters.Tests.Probes;

/// <summary>A folder laid out as the kernel lays out a 1-Wire bus master, for the real library to read.</summary>
internal sealed class FabricatedTree : IDisposable
{
    /// <summary>
    /// Set in a private mount namespace with an empty /sys (tests/limits/w1-over-sys): the tree is then made where the
    /// kernel's is.
    /// </summary>
    private static readonly bool s_isOverSys = Environment.GetEnvironmentVariable("ONBOARDHEAT_W1_OVER_SYS") == "1";

    public FabricatedTree(bool isThere = true)
    {
        Bus = s_isOverSys
            ? "/sys/devices/w1_bus_master1"
            : Path.Combine(Path.GetTempPath(), $"onboardheat-w1-{Guid.NewGuid():n}");
        if (isThere)
        {
            Appear();
        }
    }

    /// <summary>The folder of the bus.</summary>
    public string Bus { get; }

    /// <summary>
    /// What a configuration would say: null finds the master by the kernel's own list, which only /sys has.
    /// </summary>
    public string? Name => s_isOverSys ? null : Bus;

    public void Appear()
    {
        Directory.CreateDirectory(Bus);
        File.WriteAllText(Path.Combine(Bus, "w1_master_slaves"), "not found.\n");
        if (s_isOverSys)
        {
            Directory.CreateDirectory(Masters);
            Directory.CreateSymbolicLink(Path.Combine(Masters, Path.GetFileName(Bus)), Bus);
        }
    }

    public void Vanish()
    {
        Directory.Delete(Bus, recursive: true);
        if (s_isOverSys)
        {
            Directory.Delete(Masters, recursive: true);
        }
    }

    /// <summary>
    /// Hangs a probe on the bus that gives this text. The text replaces the old one in one step, as a kernel read would
    /// see it.
    /// </summary>
    public void Plug(string rom, string text)
    {
        Directory.CreateDirectory(Path.Combine(Bus, rom));
        var made = Path.Combine(Bus, rom, "w1_slave.new");
        File.WriteAllText(made, text);
        File.Move(made, FileOf(rom), overwrite: true);
        List();
    }

    public void Unplug(string rom)
    {
        Directory.Delete(Path.Combine(Bus, rom), recursive: true);
        List();
    }

    /// <summary>From now on a read of this probe never comes back: a FIFO that nobody writes.</summary>
    public void Hang(string rom)
    {
        File.Delete(FileOf(rom));
        using var made = Process.Start("mkfifo", [FileOf(rom)]);
        made.WaitForExit();
        Assert.Equal(0, made.ExitCode);
    }

    /// <summary>Lets reads that hang come back with nothing, so that no thread outlives a test.</summary>
    public void Release(string rom)
    {
        using var writer = new FileStream(FileOf(rom), FileMode.Open, FileAccess.ReadWrite);
    }

    /// <summary>A bus that can measure all at once; the trigger it was given can be read back.</summary>
    public void AllowBulk() => File.WriteAllText(BulkFile, "0\n");

    public string BulkFile => Path.Combine(Bus, "therm_bulk_read");

    public void Dispose()
    {
        if (Directory.Exists(Bus))
        {
            Vanish();
        }
    }

    private static string Masters => "/sys/bus/w1/devices";

    private string FileOf(string rom) => Path.Combine(Bus, rom, "w1_slave");

    private void List()
    {
        var roms = Directory.EnumerateDirectories(Bus).Select(Path.GetFileName).Order(StringComparer.Ordinal).ToArray();
        File.WriteAllText(
            Path.Combine(Bus, "w1_master_slaves"), roms.Length == 0 ? "not found.\n" : string.Join('\n', roms) + "\n");
    }
}
