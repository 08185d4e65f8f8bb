using System.Globalization;
using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Screening;

namespace OnboardHeat.Core.Watch;

/// <summary>What is said of a faulty probe: what was seen, in figures, and what to look at first.</summary>
internal static class ProbeFaultWords
{
    private static readonly string[] s_silentToDo =
    [
        "See whether the probe's plug sits and its cable is whole.",
        "Try it alone on the bus; a probe that stays silent is to be replaced.",
    ];

    private static readonly string[] s_supplyToDo =
    [
        "See to the supply of the bus: 85 °C or all zeros is what a probe gives when its supply dipped or the line is "
            + "held low.",
        "Look for chafed cable, water in a plug, and a pull-up that is missing or too weak.",
    ];

    private static readonly string[] s_wrongToDo =
    [
        "Look at the probe's clamp and cable: a loose contact or a wet plug makes such values.",
        "Replace the probe if it goes on; its channel is not used meanwhile.",
    ];

    private static readonly string[] s_looseToDo =
    [
        "With engine off and pipes cold, see whether the probe still sits on its pipe under its lagging, and clamp it "
            + "again.",
        "Look for wet spots at the hoses while you are there.",
    ];

    private static readonly string[] s_swappedToDo =
    [
        "Warm one of the two in your hand and see which channel rises.",
        "Exchange the two probes, or their channels in the configuration.",
    ];

    /// <summary>For a bus that is gone as a whole.</summary>
    public static IReadOnlyList<string> BusToDo { get; } =
    [
        "See whether the bus adapter is plugged in and has its supply and its fuse.",
        "Look for a short on the bus: unplug branch by branch until readings come back.",
        "Nothing is watched by temperature until then: mind the vehicle's own gauge.",
    ];

    /// <summary>One sentence with the figures of this scan.</summary>
    public static string Because(Channel channel, ScreenedScan scan)
    {
        var screened = scan[channel];
        var raw = scan.Raw[channel];
        var name = Channels.NameOf(channel);
        var read = raw.HasValue ? Celsius(raw.Value) : "nothing";
        var last = screened.IsKnown ? $"last believed {Celsius(screened.Value)} {Ago(screened.AgeS)}"
            : "never believed so far";
        return screened.Fault switch
        {
            ReadingFault.Missing when raw.HasValue => $"{name} reads {read} as a bus does where nobody answers; {last}",
            ReadingFault.Missing or ReadingFault.Stale => $"{name} gives no reading; {last}",
            ReadingFault.BadCrc => $"{name} gives damaged bytes; {last}",
            ReadingFault.PowerOn => $"{name} reads 85 °C as after losing its supply; {last}",
            ReadingFault.AllZero => $"{name} reads all zeros as a bus held low does; {last}",
            ReadingFault.OutOfRange => $"{name} reads {read}, which this place cannot be; {last}",
            ReadingFault.Stuck => $"{name} stands at {read} to the sixteenth while its neighbours move",
            ReadingFault.ImplausibleStep =>
                $"{name} reads {read} after jumps faster than this place can change; {last}",
            ReadingFault.Loose =>
                $"{name} fell to {read} by itself while {PartnerWords(channel, scan)} held: the probe is off its pipe",
            ReadingFault.Swapped => SwappedWords(channel, scan),
            _ => $"{name} is not believed; {last}",
        };
    }

    /// <summary>What to look at, in order.</summary>
    public static IReadOnlyList<string> WhatToDo(ReadingFault fault) => fault switch
    {
        ReadingFault.PowerOn or ReadingFault.AllZero => s_supplyToDo,
        ReadingFault.OutOfRange or ReadingFault.Stuck or ReadingFault.ImplausibleStep => s_wrongToDo,
        ReadingFault.Loose => s_looseToDo,
        ReadingFault.Swapped => s_swappedToDo,
        _ => s_silentToDo,
    };

    private static string PartnerWords(Channel channel, ScreenedScan scan)
    {
        var partner = channel == Channel.Flow ? Channel.Return : Channel.Flow;
        return $"{Channels.NameOf(partner)} at {Celsius(scan[partner].Value)}";
    }

    private static string SwappedWords(Channel channel, ScreenedScan scan)
    {
        var other = Neighbourhood.ExchangedWith(channel, scan.Fitted);
        return $"{Channels.NameOf(channel)} at {Celsius(scan.Raw[channel].Value)} and {Channels.NameOf(other)} at "
            + $"{Celsius(scan.Raw[other].Value)} stand the wrong way round: the two probes are exchanged";
    }

    private static string Ago(double ageS) => ageS switch
    {
        < 100 => string.Create(CultureInfo.InvariantCulture, $"{ageS:0} s ago"),
        < 6000 => string.Create(CultureInfo.InvariantCulture, $"{ageS / 60:0} min ago"),
        _ => string.Create(CultureInfo.InvariantCulture, $"{ageS / 3600:0} h ago"),
    };

    private static string Celsius(double value) => string.Create(CultureInfo.InvariantCulture, $"{value:0.0} °C");
}
