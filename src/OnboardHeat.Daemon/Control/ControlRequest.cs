namespace OnboardHeat.Daemon.Control;

/// <summary>What a command beside a running daemon asks for: one JSON object on one line.</summary>
/// <param name="Command">Name of an action, <c>check</c> or <c>probes</c>.</param>
/// <param name="Target">What it concerns; may be empty.</param>
/// <param name="Text">Words; may be empty.</param>
/// <param name="Runs">Runs of the record that are meant; empty: all.</param>
/// <param name="From">Date from which on; empty: from the beginning.</param>
/// <param name="To">Date up to which; empty: to the end.</param>
internal sealed record ControlRequest(
    string Command, string Target = "", string Text = "", string Runs = "", string From = "", string To = "");
