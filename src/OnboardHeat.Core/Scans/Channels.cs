namespace OnboardHeat.Core.Scans;

/// <summary>All channels, and the names that recordings, configuration, topics and pages use for them.</summary>
public static class Channels
{
    private static readonly string[] s_names =
    [
        "tank_top", "tank_middle", "tank_bottom", "flow", "return", "surroundings", "tray", "outlet", "cold_supply",
        "engine_coolant",
    ];

    // Kept as arrays: a collection expression of an enum would be a new array at every use.
    private static readonly Channel[] s_all =
    [
        Channel.TankTop, Channel.TankMiddle, Channel.TankBottom, Channel.Flow, Channel.Return,
        Channel.Surroundings, Channel.Tray, Channel.Outlet, Channel.ColdSupply, Channel.EngineCoolant,
    ];

    private static readonly Channel[] s_ofTank = [Channel.TankTop, Channel.TankMiddle, Channel.TankBottom];

    /// <summary>Number of channels.</summary>
    public const int Count = 10;

    /// <summary>Every channel in its fixed order.</summary>
    public static ReadOnlySpan<Channel> All => s_all;

    /// <summary>The channels on the tank itself, top first.</summary>
    public static ReadOnlySpan<Channel> OfTank => s_ofTank;

    /// <summary>The channel's name in files and topics, for example <c>tank_top</c>.</summary>
    public static string NameOf(Channel channel) => s_names[(int)channel];

    /// <summary>Finds a channel by its exact name.</summary>
    public static bool TryParse(ReadOnlySpan<char> name, out Channel channel)
    {
        for (var i = 0; i < s_names.Length; i++)
        {
            if (name.SequenceEqual(s_names[i]))
            {
                channel = (Channel)i;
                return true;
            }
        }

        channel = default;
        return false;
    }
}
