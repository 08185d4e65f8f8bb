using System.Runtime.InteropServices;

namespace OnboardHeat.History.Disk;

/// <summary>
/// Brings a folder's own entries to the card. A new file whose folder was not synced may be gone after a power cut,
/// whatever was synced into it (fsync(2), 'Calling fsync() does not necessarily ensure that the entry in the directory
/// ... has also reached disk'). The framework opens no folders, hence these three calls.
/// </summary>
internal static partial class FolderSync
{
    private const int ReadOnlyCloseOnExec = 0x80000;

    public static void Sync(string path)
    {
        var descriptor = Open(path, ReadOnlyCloseOnExec);
        if (descriptor < 0)
        {
            throw Failure("open", path);
        }

        try
        {
            if (FSync(descriptor) != 0)
            {
                throw Failure("sync", path);
            }
        }
        finally
        {
            _ = Close(descriptor);
        }
    }

    private static IOException Failure(string what, string path) =>
        new($"cannot {what} the folder {path}: {Marshal.GetLastPInvokeErrorMessage()}");

    [LibraryImport("libc", EntryPoint = "open", SetLastError = true, StringMarshalling = StringMarshalling.Utf8)]
    private static partial int Open(string path, int flags);

    [LibraryImport("libc", EntryPoint = "fsync", SetLastError = true)]
    private static partial int FSync(int descriptor);

    [LibraryImport("libc", EntryPoint = "close", SetLastError = true)]
    private static partial int Close(int descriptor);
}
