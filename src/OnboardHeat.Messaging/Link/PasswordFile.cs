using System.Text;

namespace OnboardHeat.Messaging.Link;

/// <summary>Reads the password at each connection, so that a corrected file heals without a restart.</summary>
internal static class PasswordFile
{
    // A password; anything longer is the wrong file.
    private const int MaxBytes = 4096;

    private const UnixFileMode ForOthers = UnixFileMode.OtherRead | UnixFileMode.OtherWrite | UnixFileMode.GroupWrite;

    /// <summary>The password without the line end that an editor puts behind it.</summary>
    /// <exception cref="BrokerException">The file cannot be used, and why.</exception>
    public static byte[] Read(string path)
    {
        try
        {
            if (!OperatingSystem.IsWindows() && (File.GetUnixFileMode(path) & ForOthers) != 0)
            {
                throw new BrokerException($"password file {path} is open to others: chmod 640 (or 600) it");
            }

            using var stream = File.OpenRead(path);
            var bytes = new byte[MaxBytes + 1];
            var length = stream.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
            var text = bytes.AsSpan(0, length).TrimEnd("\r\n"u8);
            return length > MaxBytes
                ? throw new BrokerException($"password file {path} is longer than {MaxBytes} bytes")
                : text.IsEmpty ? throw new BrokerException($"password file {path} is empty")
                : text.ToArray();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new BrokerException($"password file {path} cannot be read: {e.Message}");
        }
    }
}
