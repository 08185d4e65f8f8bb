namespace OnboardHeat.Engine.Options;

/// <summary>One on-off contact.</summary>
public sealed class SignalOptions
{
    /// <summary>Which signal it is, for example <c>engine_running</c>; required.</summary>
    public string Signal { get; set; } = "";

    /// <summary>
    /// Pin number of the processor (not of the header), 0 to 27; required. 24-V and 12-V lines need a divider or an
    /// optocoupler.
    /// </summary>
    public int Pin { get; set; }

    /// <summary>Whether a low level means 1; default false. True for a switch to ground with a pull-up.</summary>
    public bool ActiveLow { get; set; }
}
