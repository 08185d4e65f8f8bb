namespace OnboardHeat.History.Disk;

/// <summary>
/// What the record needs of a file, in the words of the card it lies on. A write may be lost, reordered or torn by a
/// power cut until <see cref="Sync"/> has returned; a simulated card does exactly that.
/// </summary>
internal interface IRecordFile : IDisposable
{
    long Length { get; }

    /// <summary>Reads up to the end of the file; gives how many bytes there were.</summary>
    int Read(long offset, Span<byte> into);

    void Write(long offset, ReadOnlySpan<byte> bytes);

    void SetLength(long length);

    /// <summary>Returns once everything written is on the card.</summary>
    void Sync();
}
