namespace OnboardHeat.Engine.Pictures;

/// <summary>What is known of the tank.</summary>
public sealed record TankForm
{
    /// <summary>Whether there is an estimate at all.</summary>
    public required bool Known { get; init; }

    /// <summary>Whether a person said that the tank is drained.</summary>
    public required bool Drained { get; init; }

    /// <summary>Water of each layer, degrees Celsius, equal volumes, bottom first; empty when unknown.</summary>
    public required IReadOnlyList<double> LayersCelsius { get; init; }

    /// <summary>Water at the top, degrees Celsius; null when unknown.</summary>
    public required EstimateForm? TopCelsius { get; init; }

    /// <summary>Mean of the water, degrees Celsius; null when unknown.</summary>
    public required EstimateForm? MeanCelsius { get; init; }

    /// <summary>Water at the bottom, degrees Celsius; null when unknown.</summary>
    public required EstimateForm? BottomCelsius { get; init; }
}
