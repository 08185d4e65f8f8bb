using OnboardHeat.Core.Scans;

namespace OnboardHeat.Core.Screening;

/// <summary>
/// Which places can speak for or against which: the tank's probes among themselves, flow and return, air and tray.
/// </summary>
internal static class Neighbourhood
{
    /// <summary>
    /// Air, outlet, cold supply and the engine's own sensor have no neighbour that must move with them: they are never
    /// called stuck.
    /// </summary>
    public static Standstill[] Standstills() =>
    [
        Tank(Channel.TankTop, Channel.TankMiddle, Channel.TankBottom),
        Tank(Channel.TankMiddle, Channel.TankTop, Channel.TankBottom),
        Tank(Channel.TankBottom, Channel.TankTop, Channel.TankMiddle),
        Line(Channel.Flow, Channel.Return),
        Line(Channel.Return, Channel.Flow),
        Air(Channel.Tray, Channel.Surroundings),
    ];

    public static LooseLine[] LooseLines() => [new(Channel.Flow, Channel.Return), new(Channel.Return, Channel.Flow)];

    /// <summary>
    /// With top and bottom there, they are judged alone: an exchange of both would drag an innocent middle along.
    /// </summary>
    public static ExchangedPair[] Pairs(FittedSet fitted) =>
    [
        new(Channel.Flow, Channel.Return, ScreeningPolicy.SwappedLinesK, ScreeningPolicy.SwappedLinesS),
        .. fitted.Has(Channel.TankTop) && fitted.Has(Channel.TankBottom)
            ? (ExchangedPair[])[Layers(Channel.TankTop, Channel.TankBottom)]
            : [Layers(Channel.TankTop, Channel.TankMiddle), Layers(Channel.TankMiddle, Channel.TankBottom)],
    ];

    /// <summary>The other one of the pair that a channel may be exchanged with.</summary>
    public static Channel ExchangedWith(Channel channel, FittedSet fitted) => channel switch
    {
        Channel.Flow => Channel.Return,
        Channel.Return => Channel.Flow,
        Channel.TankTop => fitted.Has(Channel.TankBottom) ? Channel.TankBottom : Channel.TankMiddle,
        Channel.TankBottom => fitted.Has(Channel.TankTop) ? Channel.TankTop : Channel.TankMiddle,
        _ => fitted.Has(Channel.TankTop) ? Channel.TankTop : Channel.TankBottom,
    };

    /// <summary>
    /// Whether another place reads near this channel's suspect value (85 °C, 0 °C). For 85 °C only what touches tank or
    /// coolant counts: neither air nor tray is ever that hot because the coolant is.
    /// </summary>
    public static bool HasWitness(Scan scan, Channel channel)
    {
        var reading = scan[channel];
        if (reading.Value is not (ScreeningPolicy.PowerOnCelsius
            or ScreeningPolicy.HeldLowCelsius or ScreeningPolicy.NobodyCelsius))
        {
            return false;
        }

        var isHot = reading.Value > ScreeningPolicy.HeldLowCelsius;
        if (isHot && !IsOfHotWater(channel))
        {
            return false;
        }

        foreach (var other in Channels.All)
        {
            var beside = scan[other];
            if (other != channel && beside.HasValue
                && !beside.Value.Equals(reading.Value) && (!isHot || IsOfHotWater(other))
                && Math.Abs(beside.Value - reading.Value) <= ScreeningPolicy.SuspectWitnessK)
            {
                return true;
            }
        }

        return false;
    }

    private static bool IsOfHotWater(Channel channel) => channel
        is Channel.TankTop or Channel.TankMiddle or Channel.TankBottom
            or Channel.Flow or Channel.Return or Channel.EngineCoolant;

    private static Standstill Tank(Channel channel, params Channel[] neighbours) =>
        new(channel, neighbours, ScreeningPolicy.TankStillS, ScreeningPolicy.TankStillPartnerK);

    private static Standstill Line(Channel channel, Channel partner) =>
        new(channel, [partner], ScreeningPolicy.LineStillS, ScreeningPolicy.LineStillPartnerK);

    private static Standstill Air(Channel channel, Channel partner) =>
        new(channel, [partner], ScreeningPolicy.AirStillS, ScreeningPolicy.AirStillPartnerK);

    private static ExchangedPair Layers(Channel upper, Channel lower) =>
        new(upper, lower, ScreeningPolicy.SwappedTankK, ScreeningPolicy.SwappedTankS);
}
