namespace OnboardHeat.Core.Scans;

/// <summary>All channels, and the names that recordings, configuration, topics and pages use for them.</summary>
public static class Channels
{
    private static readonly string[] s_names =
    [
        "tank_top", "tank_middle", "tank_bottom", "flow", "return", "surroundings", "tray", "outlet", "cold_supply", "engine_coolant",
    ];

    /// <summary>Number of channels.</summary>
    public const int Count = 10;

    /// <summary>Every channel in its fixed order.</summary>
    public static ReadOnlySpan<Channel> All =>
    [
        Channel.TankTop, Channel.TankMiddle, Channel.TankBottom, Channel.Flow, Channel.Return,
        Channel.Surroundings, Channel.Tray, Channel.Outlet, Channel.ColdSupply, Channel.EngineCoolant,
    ];

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
