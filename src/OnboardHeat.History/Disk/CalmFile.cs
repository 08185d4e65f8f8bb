namespace OnboardHeat.History.Disk;

/// <summary>
/// Keeps failures of the card from the engine. One that reaches it leaves its pages in a state that its finalizer
/// cannot clear, and a finalizer that throws ends the whole process, alarms and all (measured, fifth write failing). So
/// from the first failure on nothing more goes to the card: what the engine still writes stays in memory until the
/// month is closed, and the month itself tells the failure.
/// </summary>
internal sealed class CalmFile(IRecordFile card, CardTrouble trouble) : IRecordFile
{
    private OverlayFile? _overlay;

    public long Length => _overlay?.Length ?? card.Length;

    public int Read(long offset, Span<byte> into)
    {
        try
        {
            return _overlay?.Read(offset, into) ?? card.Read(offset, into);
        }
        catch (IOException e)
        {
            trouble.Note(e);
            into.Clear();
            return into.Length;
        }
    }

    public void Write(long offset, ReadOnlySpan<byte> bytes)
    {
        if (!trouble.IsThere)
        {
            try
            {
                card.Write(offset, bytes);
                return;
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                trouble.Note(e);
            }
        }

        Overlay().Write(offset, bytes);
    }

    public void SetLength(long length)
    {
        if (!trouble.IsThere)
        {
            try
            {
                card.SetLength(length);
                return;
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                trouble.Note(e);
            }
        }

        Overlay().SetLength(length);
    }

    public void Sync()
    {
        if (trouble.IsThere)
        {
            return;
        }

        try
        {
            card.Sync();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            trouble.Note(e);
        }
    }

    public void Dispose() => card.Dispose();

    private OverlayFile Overlay() => _overlay ??= new OverlayFile(card);
}
