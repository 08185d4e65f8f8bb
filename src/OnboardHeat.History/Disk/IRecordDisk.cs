namespace OnboardHeat.History.Disk;

/// <summary>The folder of the record. Creating, renaming and deleting are on the card when the call returns.</summary>
internal interface IRecordDisk
{
    /// <summary>Names of all files in the folder, in no order.</summary>
    IReadOnlyList<string> Names();

    /// <summary>Opens a file to read and write; makes it where it is missing.</summary>
    IRecordFile Open(string name);

    void Rename(string from, string to);

    void Delete(string name);

    /// <summary>Size of a file, 0 where there is none.</summary>
    long LengthOf(string name);

    /// <summary>Bytes that may still be written before the card is full.</summary>
    long FreeBytes { get; }

    /// <summary>
    /// Takes the folder for this process; throws an <see cref="IOException"/> with one clear line while another has it.
    /// </summary>
    IDisposable Lock();
}
