namespace OnboardHeat.Core.Circuit;

/// <summary>The coolant circuit as its owner describes it.</summary>
public sealed record CircuitDescription
{
    /// <summary>Highest coolant temperature that is in order, degrees Celsius, 60 to 140; default 110.</summary>
    public double CoolantMaxCelsius { get; init; } = 110;

    /// <summary>Hoses, pipes and other parts with a rating of their own; may be empty.</summary>
    public IReadOnlyList<CircuitPart> Parts { get; init; } = [];
}
