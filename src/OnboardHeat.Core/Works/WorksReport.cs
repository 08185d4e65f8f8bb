namespace OnboardHeat.Core.Works;

/// <summary>
/// Works on the circuit as they stand after a scan: for the screens, and for whoever bleeds the circuit.
/// </summary>
public sealed record WorksReport
{
    /// <summary>No works, and nothing to ask.</summary>
    public static WorksReport None { get; } = new();

    /// <summary>
    /// Whether works are under way: the circuit's watchers are out of service, and nothing is learnt.
    /// </summary>
    public bool IsUnderWay { get; init; }

    /// <summary>Seconds that they have lasted, not negative; zero when none are under way.</summary>
    public double AgeS { get; init; }

    /// <summary>Whether they began before this run: a power cut does not end them.</summary>
    public bool IsFromBeforeRestart { get; init; }

    /// <summary>Whether they have ended and nobody has said yet what was changed.</summary>
    public bool AsksWhatChanged { get; init; }

    /// <summary>The line to the coil.</summary>
    public LineWarmth Flow { get; init; }

    /// <summary>The line from the coil.</summary>
    public LineWarmth Return { get; init; }

    /// <summary>How far bleeding has come.</summary>
    public BleedingStep Bleeding { get; init; }

    /// <summary>Whether the coolant is hot enough against the tank to show the heat that it carries.</summary>
    public bool CanShowHeat { get; init; }

    /// <summary>
    /// Whole seconds, not negative, for which tank and lines have shown heat carried without a break.
    /// </summary>
    public double CirculatesForS { get; init; }

    /// <summary>The same for a person, in sentences; empty when there is nothing to say.</summary>
    public IReadOnlyList<string> Words => WorksWords.Of(this);
}
