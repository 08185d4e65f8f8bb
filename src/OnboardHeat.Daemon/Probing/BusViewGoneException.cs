namespace OnboardHeat.Daemon.Probing;

/// <summary>The daemon that looked for us has ended or answers no more.</summary>
internal sealed class BusViewGoneException(string message) : Exception(message);
