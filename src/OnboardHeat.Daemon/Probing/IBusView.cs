namespace OnboardHeat.Daemon.Probing;

/// <summary>The bus as a command sees it: through the running daemon, or by itself where none runs.</summary>
internal interface IBusView : IDisposable
{
    /// <summary>Who looks, in words.</summary>
    string Words { get; }

    /// <summary>One look.</summary>
    Task<BusSight> LookAsync(CancellationToken cancellationToken);

    /// <summary>Keeps what a pair check found for a place; why it cannot be kept, or null.</summary>
    Task<string?> KeepOffsetAsync(string channel, double offsetKelvin, string reference);
}
