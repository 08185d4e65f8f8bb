namespace OnboardHeat.Daemon.Control;

/// <summary>What a command beside a running daemon asks for: one JSON object on one line.</summary>
/// <param name="Command">Name of an action, <c>check</c> or <c>probes</c>.</param>
/// <param name="Target">What it concerns; may be empty.</param>
/// <param name="Text">Words; may be empty.</param>
internal sealed record ControlRequest(string Command, string Target = "", string Text = "");
