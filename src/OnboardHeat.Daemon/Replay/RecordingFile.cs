using OnboardHeat.Engine.Recordings;

namespace OnboardHeat.Daemon.Replay;

/// <summary>
/// A recording named on the command line. It is read twice: once to check it, once to judge; what cannot be rewound is
/// held.
/// </summary>
internal sealed class RecordingFile(string name)
{
    private byte[]? _held;

    /// <summary>The argument as given.</summary>
    public string Name => name;

    /// <summary>Opens the recording at its beginning.</summary>
    /// <exception cref="RecordingException">The file cannot be read or its beginning cannot be taken.</exception>
    public RecordingReader Open()
    {
        try
        {
            return RecordingReader.Open(name, OpenStream());
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException)
        {
            throw Unreadable(e);
        }
    }

    /// <summary>Reads the whole recording and lets nothing pass that cannot be taken.</summary>
    /// <exception cref="RecordingException">The file cannot be read, or a row cannot be taken.</exception>
    public void Check()
    {
        try
        {
            using var reader = Open();
            var scan = new Core.Scans.Scan();
            while (reader.Read(scan))
            {
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw Unreadable(e);
        }
    }

    private Stream OpenStream()
    {
        if (_held is null)
        {
            if (Directory.Exists(name))
            {
                throw new IOException("it is a folder");
            }

            var stream = new FileStream(name, FileMode.Open, FileAccess.Read, FileShare.ReadWrite, bufferSize: 1);
            if (stream.CanSeek)
            {
                return stream;
            }

            using (stream)
            {
                var copy = new MemoryStream();
                stream.CopyTo(copy);
                _held = copy.ToArray();
            }
        }

        return new MemoryStream(_held, writable: false);
    }

    private RecordingException Unreadable(Exception e) =>
        new(name, e is FileNotFoundException or DirectoryNotFoundException
        ? "there is no such file"
        : $"cannot be read: {e.Message.ReplaceLineEndings(" ")}");
}
