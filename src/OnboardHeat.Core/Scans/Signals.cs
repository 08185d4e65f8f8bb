namespace OnboardHeat.Core.Scans;

/// <summary>All signals, and the names that recordings, configuration, topics and pages use for them.</summary>
public static class Signals
{
    private static readonly string[] s_names = [
        "engine_running", "tray_wet", "coolant_low", "valves_closed", "element_on"];

    // Kept as an array: a collection expression of an enum would be a new array at every use.
    private static readonly Signal[] s_all =
        [Signal.EngineRunning, Signal.TrayWet, Signal.CoolantLow, Signal.ValvesClosed, Signal.ElementOn];

    /// <summary>Number of signals.</summary>
    public const int Count = 5;

    /// <summary>Every signal in its fixed order.</summary>
    public static ReadOnlySpan<Signal> All => s_all;

    /// <summary>The signal's name in files and topics, for example <c>engine_running</c>.</summary>
    public static string NameOf(Signal signal) => s_names[(int)signal];

    /// <summary>Finds a signal by its exact name.</summary>
    public static bool TryParse(ReadOnlySpan<char> name, out Signal signal)
    {
        for (var i = 0; i < s_names.Length; i++)
        {
            if (name.SequenceEqual(s_names[i]))
            {
                signal = (Signal)i;
                return true;
            }
        }

        signal = default;
        return false;
    }
}
