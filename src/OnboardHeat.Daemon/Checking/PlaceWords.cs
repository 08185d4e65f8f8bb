namespace OnboardHeat.Daemon.Checking;

/// <summary>
/// What a probe or contact is good for beside the watchers that need it, in the words of hardware-notes.
/// </summary>
internal static class PlaceWords
{
    private static readonly Dictionary<string, string> s_gains = new()
    {
        ["tank_top"] = "what the next litre will be",
        ["tank_middle"] = "the layers known, and a narrower range of minutes",
        ["tank_bottom"] = "a draw seen at once, and how far down the heat reaches",
        ["flow"] = "the coolant's temperature; the first to fall when a line runs empty",
        ["return"] = "with flow the heating power, and that coolant passes",
        ["surroundings"] = "losses counted from the air at the tank, not from a guess",
        ["tray"] = "the fastest witness of a hose that came off",
        ["outlet"] = "what came out of the tap",
        ["cold_supply"] = "what goes in; frost in the pipe",
        ["engine_coolant"] = "the engine's own temperature beside the lines'",
        ["engine_running"] = "the engine known and not worked out from the lines; fast scans at once",
        ["tray_wet"] = "a drip that does not warm the tray",
        ["coolant_low"] = "a slow loss seen in the vessel",
        ["valves_closed"] = "closed valves told from a circulation that stopped",
        ["element_on"] = "the electric element's share of the heat",
    };

    /// <summary>What that place adds.</summary>
    public static string GainOf(string place) => s_gains[place];
}
