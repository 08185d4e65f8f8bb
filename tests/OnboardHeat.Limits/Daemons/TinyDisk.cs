using System.Diagnostics;

namespace OnboardHeat.Limits.Daemons;

/// <summary>
/// A small file system in memory over the state folder, so that a disk can really be full. Needs the right to mount.
/// </summary>
internal sealed class TinyDisk : IDisposable
{
    private const int FillBytes = 1 << 20;

    private readonly string _folder;

    private TinyDisk(string folder) => _folder = folder;

    /// <summary>Mounts it; null where that is not allowed.</summary>
    public static TinyDisk? TryMount(string folder) =>
        Run("mount", "-t", "tmpfs", "-o", "size=80m", "tmpfs", folder) ? new TinyDisk(folder) : null;

    /// <summary>Fills it to the last byte.</summary>
    public void Fill()
    {
        using var filler = new FileStream(Path.Combine(_folder, "filler"), FileMode.Create, FileAccess.Write,
            FileShare.None, bufferSize: 0);
        for (var bytes = FillBytes; bytes > 0;)
        {
            try
            {
                filler.Write(new byte[bytes]);
            }
            catch (IOException)
            {
                bytes /= 2;
            }
        }
    }

    public void Dispose() => Run("umount", "-l", _folder);

    private static bool Run(string program, params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardError = true })!;
        process.StandardError.ReadToEnd();
        process.WaitForExit();
        return process.ExitCode == 0;
    }
}
