namespace OnboardHeat.Daemon.Control;

/// <summary>
/// An answer that is more than a page of text: after a first reply that says yes, bytes go over the socket in frames,
/// and a last reply says how it went.
/// </summary>
/// <param name="Problem">Why it cannot begin; null when it can.</param>
/// <param name="RunAsync">
/// Moves the bytes and gives the last reply; its <see cref="IOException"/> becomes one that says no.
/// </param>
internal sealed record Transfer(string? Problem, Func<Stream, CancellationToken, Task<ControlReply>> RunAsync);
