namespace OnboardHeat.Daemon;

/// <summary>
/// Whoever read the output has gone (<c>| head -1</c>): there is nobody left to tell, and nothing is wrong.
/// </summary>
internal sealed class OutputClosedException() : IOException("The reader of the output has gone.");
