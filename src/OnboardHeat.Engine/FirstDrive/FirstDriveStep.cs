using OnboardHeat.Core.Scans;

namespace OnboardHeat.Engine.FirstDrive;

/// <summary>One thing to be seen on the first drive after fitting.</summary>
public sealed class FirstDriveStep
{
    private readonly Func<FittedSet, bool> _canBeSeen;

    private FirstDriveStep(string name, string words, Func<FittedSet, bool> canBeSeen)
    {
        Name = name;
        Words = words;
        _canBeSeen = canBeSeen;
    }

    /// <summary>
    /// Hot coolant comes in by the flow line: the probes are not exchanged, and neither are the hoses.
    /// </summary>
    public static FirstDriveStep FlowFirst { get; } = new("flow-first", "flow warms before return", HasBothLines);

    /// <summary>Coolant passes the coil: no air lock, no closed valve.</summary>
    public static FirstDriveStep BothFollow { get; } = new(
        "both-follow", "flow and return both follow the engine", HasBothLines);

    /// <summary>The coil heats the water.</summary>
    public static FirstDriveStep TankRises { get; } =
        new("tank-rises", "the tank rises", static fitted => fitted.Has(Channel.Flow) && fitted.HasTankProbe);

    /// <summary>Nothing hot drips where the joints are new.</summary>
    public static FirstDriveStep TrayStays { get; } = new(
        "tray-stays", "the tray stays cool and dry with hot coolant above it",
        static fitted => fitted.Has(Channel.Flow) && (fitted.Has(Channel.Tray) || fitted.Has(Signal.TrayWet)));

    /// <summary>All of them, in the order in which a drive shows them.</summary>
    public static IReadOnlyList<FirstDriveStep> All { get; } = [FlowFirst, BothFollow, TankRises, TrayStays];

    /// <summary>How the small file names it.</summary>
    public string Name { get; }

    /// <summary>What is to be seen.</summary>
    public string Words { get; }

    /// <summary>Whether the van has the probes for it.</summary>
    public bool CanBeSeen(FittedSet fitted) => _canBeSeen(fitted);

    private static bool HasBothLines(FittedSet fitted) => fitted.Has(Channel.Flow) && fitted.Has(Channel.Return);
}
