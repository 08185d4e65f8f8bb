namespace OnboardHeat.Simulation;

/// <summary>A kind of road, or of standing.</summary>
public enum LegKind
{
    /// <summary>Engine off.</summary>
    Parked,

    /// <summary>Engine on, standing.</summary>
    Idle,

    /// <summary>Stop and go with lights.</summary>
    Town,

    /// <summary>Country road.</summary>
    Country,

    /// <summary>Motorway.</summary>
    Motorway,

    /// <summary>Pass road upwards.</summary>
    Climb,

    /// <summary>Pass road downwards, mostly on the engine's brake.</summary>
    Descent,
}
