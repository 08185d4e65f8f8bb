namespace OnboardHeat.History.Disk;

/// <summary>The first failure of the card under one month, shared by its data and its log.</summary>
internal sealed class CardTrouble
{
    private Exception? _first;

    public bool IsThere => _first is not null;

    public void Note(Exception e) => _first ??= e;

    /// <summary>Throws for what failed since the month was opened.</summary>
    public void ThrowIfThere()
    {
        if (_first is not null)
        {
            throw new IOException(_first.Message, _first);
        }
    }
}
