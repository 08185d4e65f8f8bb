namespace OnboardHeat.Daemon.Running;

/// <summary>
/// One daemon judges a van. The lock is the operating system's and ends with the process, however that ends.
/// </summary>
internal sealed class InstanceLock : IDisposable
{
    /// <summary>Name of the lock file in the state folder.</summary>
    public const string FileName = "daemon.lock";

    /// <summary>EWOULDBLOCK of Linux, what the framework passes on when a file is locked by somebody else.</summary>
    private const int WouldBlock = 11;

    private readonly FileStream? _held;

    private InstanceLock(FileStream? held, string? trouble)
    {
        _held = held;
        Trouble = trouble;
    }

    /// <summary>
    /// Why there is no lock though nobody else has it: a folder that cannot be written. Judging goes on without.
    /// </summary>
    public string? Trouble { get; }

    /// <summary>Takes the lock; null when another daemon holds it.</summary>
    public static InstanceLock? TryTake(string folder)
    {
        var path = Path.Combine(folder, FileName);
        try
        {
            Directory.CreateDirectory(folder);
            return new InstanceLock(
                new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None), null);
        }
        catch (IOException fault) when (fault.HResult == WouldBlock)
        {
            return null;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return new InstanceLock(null, fault.Message);
        }
    }

    public void Dispose() => _held?.Dispose();
}
