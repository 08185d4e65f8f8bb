namespace OnboardHeat.Engine.Options;

/// <summary>A fitted part with a rating of its own.</summary>
public sealed class PartOptions
{
    /// <summary>
    /// Short name, 1 to 32 of a-z, 0-9 and '-'; required. The subject of its alarms, so it should not change over the
    /// years.
    /// </summary>
    public string Id { get; set; } = "";

    /// <summary>What the owner calls it, up to 80 characters; default the id.</summary>
    public string Name { get; set; } = "";

    /// <summary>The channel that tells how hot it gets, for example <c>return</c>; required.</summary>
    public string On { get; set; } = "";

    /// <summary>
    /// Its rating in degrees Celsius, 30 to 200; required. Printed on the part or in its data sheet.
    /// </summary>
    public double MaxCelsius { get; set; }
}
