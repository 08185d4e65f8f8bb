namespace OnboardHeat.Daemon.Running;

/// <summary>Something that runs as long as the daemon does.</summary>
/// <param name="Name">Its name in the log.</param>
/// <param name="Running">Ends when it was asked to; an end before that is one that nobody asked for.</param>
internal sealed record Worker(string Name, Task Running);
