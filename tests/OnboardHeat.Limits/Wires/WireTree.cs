using OnboardHeat.Adapters.Tests.Probes;
using OnboardHeat.Core.Scans;

namespace OnboardHeat.Limits.Wires;

/// <summary>A folder laid out as the kernel lays out a 1-Wire bus master, one probe for each channel.</summary>
internal sealed class WireTree(string folder)
{
    private readonly HashSet<Channel> _plugged = [];

    /// <summary>The absolute path that stands for the bus's name.</summary>
    public string Folder => folder;

    /// <summary>The address of the probe at a place.</summary>
    public static string RomOf(Channel channel) => FormattableString.Invariant($"28-0000000a1c{(int)channel + 1:x2}");

    /// <summary>
    /// Gives a probe another temperature in one step, as a kernel read would see it; plugs it in if it was not.
    /// </summary>
    public void Set(Channel channel, double celsius)
    {
        Directory.CreateDirectory(FolderOf(channel));
        var made = FileOf(channel) + ".new";
        File.WriteAllText(made, KernelTexts.Of(celsius));
        File.Move(made, FileOf(channel), overwrite: true);
        if (_plugged.Add(channel))
        {
            List();
        }
    }

    /// <summary>Pulls a probe off the bus.</summary>
    public void Unplug(Channel channel)
    {
        if (_plugged.Remove(channel))
        {
            Directory.Delete(FolderOf(channel), recursive: true);
            List();
        }
    }

    /// <summary>The file that a read of this probe opens.</summary>
    public string FileOf(Channel channel) => Path.Combine(FolderOf(channel), "w1_slave");

    private string FolderOf(Channel channel) => Path.Combine(folder, RomOf(channel));

    private void List() => File.WriteAllText(
        Path.Combine(folder, "w1_master_slaves"),
        string.Concat(_plugged.Order().Select(channel => RomOf(channel) + "\n")));
}
