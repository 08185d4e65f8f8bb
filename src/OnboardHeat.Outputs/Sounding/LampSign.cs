namespace OnboardHeat.Outputs.Sounding;

/// <summary>What the lamp says, least urgent first.</summary>
internal enum LampSign
{
    /// <summary>Nothing to show.</summary>
    Dark,

    /// <summary>Works are under way: the circuit is not watched. A short blip now and then.</summary>
    Works,

    /// <summary>Something stands that was seen, or went before anybody saw it: steady.</summary>
    Seen,

    /// <summary>A warning nobody has acknowledged: slow.</summary>
    Warning,

    /// <summary>Something critical that nobody has acknowledged: fast.</summary>
    Critical,
}
