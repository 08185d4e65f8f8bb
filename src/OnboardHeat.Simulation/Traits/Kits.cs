using OnboardHeat.Core.Scans;

namespace OnboardHeat.Simulation;

/// <summary>Usual sets of probes and signals.</summary>
internal static class Kits
{
    private static readonly Channel[] s_lines = [Channel.TankTop, Channel.TankBottom, Channel.Flow, Channel.Return];

    /// <summary>Two tank probes, both lines, surroundings, tray and the engine signal.</summary>
    public static FittedSet Full { get; } = new(
        [.. s_lines, Channel.Surroundings, Channel.Tray], [Signal.EngineRunning]);

    /// <summary>The same, and a signal that tells when the electric element heats.</summary>
    public static FittedSet FullWithElement { get; } = new(
        [.. s_lines, Channel.Surroundings, Channel.Tray], [Signal.EngineRunning, Signal.ElementOn]);

    /// <summary>Full without the tray.</summary>
    public static FittedSet NoTray { get; } = new([.. s_lines, Channel.Surroundings], [Signal.EngineRunning]);

    /// <summary>Tank and lines only.</summary>
    public static FittedSet Lines { get; } = new(s_lines, [Signal.EngineRunning]);

    /// <summary>As full, but nobody tells whether the engine runs.</summary>
    public static FittedSet EngineUnknown { get; } = new([.. s_lines, Channel.Surroundings, Channel.Tray], []);

    /// <summary>The least: one probe at the top of the tank.</summary>
    public static FittedSet OneTankProbe { get; } = new([Channel.TankTop], []);

    /// <summary>Everything there is.</summary>
    public static FittedSet Everything { get; } = new(Channels.All.ToArray(), Signals.All.ToArray());
}
