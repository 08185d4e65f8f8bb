namespace OnboardHeat.Engine.Ports;

/// <summary>How far the dates of a run can be believed.</summary>
public enum RunDating
{
    /// <summary>Its clock was never known to be right: dates are what it claimed, or none.</summary>
    Undated,

    /// <summary>The clock became trusted during the run: everything before was dated backwards from there.</summary>
    DatedAfterwards,

    /// <summary>The clock was trusted from the first scan.</summary>
    Trusted,
}
