namespace OnboardHeat.Core.Journeys;

/// <summary>What the nights say of a change of the lagging.</summary>
public enum InsulationVerdict
{
    /// <summary>Fewer nights than any statement needs: one on each side and a second on either.</summary>
    NotEnoughNights,

    /// <summary>The tank loses less than before, by more than chance explains.</summary>
    Better,

    /// <summary>The tank loses more than before, by more than chance explains.</summary>
    Worse,

    /// <summary>The 90 % interval holds zero: no difference can be told.</summary>
    NoDifferenceSeen,
}
