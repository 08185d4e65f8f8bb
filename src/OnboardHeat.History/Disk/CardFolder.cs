namespace OnboardHeat.History.Disk;

/// <summary>The record's folder on the real card.</summary>
internal sealed class CardFolder : IRecordDisk
{
    /// <summary>Name of the file whose lock says that the record is in use.</summary>
    public const string LockName = "record.lock";

    private readonly string _path;
    private readonly bool _isToRead;

    /// <summary>Takes the folder, and makes it where it is missing; one that is only read is taken as it is.</summary>
    public CardFolder(string path, bool isToRead = false)
    {
        _path = Path.GetFullPath(path);
        _isToRead = isToRead;
        if (!isToRead && !Directory.Exists(_path))
        {
            Directory.CreateDirectory(_path);
            FolderSync.Sync(Path.GetDirectoryName(_path) ?? "/");
        }
    }

    public long FreeBytes => new DriveInfo(_path).AvailableFreeSpace;

    public IReadOnlyList<string> Names() => [.. Directory.EnumerateFiles(_path).Select(p => Path.GetFileName(p)!)];

    public IRecordFile Open(string name)
    {
        var path = Path.Combine(_path, name);
        if (_isToRead)
        {
            return new CardFile(File.OpenHandle(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite));
        }

        var isNew = !File.Exists(path);
        var handle = File.OpenHandle(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.ReadWrite);
        if (isNew)
        {
            FolderSync.Sync(_path);
        }

        return new CardFile(handle);
    }

    public void Rename(string from, string to)
    {
        File.Move(Path.Combine(_path, from), Path.Combine(_path, to));
        FolderSync.Sync(_path);
    }

    public void Delete(string name)
    {
        File.Delete(Path.Combine(_path, name));
        FolderSync.Sync(_path);
    }

    public long LengthOf(string name)
    {
        var file = new FileInfo(Path.Combine(_path, name));
        return file.Exists ? file.Length : 0;
    }

    public IDisposable Lock()
    {
        try
        {
            return File.OpenHandle(Path.Combine(_path, LockName), FileMode.OpenOrCreate, FileAccess.ReadWrite,
                FileShare.None);
        }
        catch (IOException e) when (e is not DirectoryNotFoundException and not FileNotFoundException)
        {
            throw new IOException(
                $"the record in {_path} is in use by another process, or cannot be locked: {e.Message}", e);
        }
    }
}
