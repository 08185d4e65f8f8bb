namespace OnboardHeat.Engine.Ports;

/// <summary>
/// Whether the wall clock is known to be right. A Pi without a clock of its own starts with the time of its last
/// shutdown.
/// </summary>
public interface IUtcTrust
{
    /// <summary>True once the clock was set from outside in this boot.</summary>
    bool IsTrusted { get; }
}
