using System.Runtime.InteropServices;
using System.Text;

namespace OnboardHeat.Engine.Keeping;

/// <summary>
/// A rename is on the disk only when its folder is: the framework opens no folders, so this asks the system itself.
/// </summary>
internal static class Folder
{
    /// <summary>Forces a folder's entries to the disk. Not every file system can; nothing is told then.</summary>
    public static void FlushToDisk(string folder)
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        var descriptor = open([.. Encoding.UTF8.GetBytes(folder), 0], 0);
        if (descriptor >= 0)
        {
            _ = fsync(descriptor);
            _ = close(descriptor);
        }
    }

    [DllImport("libc")]
    private static extern int open(byte[] path, int flags);

    [DllImport("libc")]
    private static extern int fsync(int descriptor);

    [DllImport("libc")]
    private static extern int close(int descriptor);
}
