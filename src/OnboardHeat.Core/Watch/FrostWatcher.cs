using OnboardHeat.Core.Scans;

namespace OnboardHeat.Core.Watch;

/// <summary>Water in tank or pipes is near freezing, or will be before anybody is likely to look again.</summary>
internal sealed class FrostWatcher(AlarmBoard board) : IWatcher
{
    /// <summary>Told at this reading, and no longer above that one, °C: offsets of probes reach 0.8 K.</summary>
    private const double NearCelsius = 2, ClearCelsius = 4;

    /// <summary>A forecast within this is told, and forgotten beyond that, s: a night, and some.</summary>
    private const double SoonS = 8 * 3600, NotSoonS = 14 * 3600;

    private static readonly Channel[] s_withWater =
        [Channel.TankTop, Channel.TankMiddle, Channel.TankBottom, Channel.Outlet, Channel.ColdSupply];

    private static readonly string[] s_whatToDo =
    [
        "Drain tank, pipes, taps and pump, or keep the place heated.",
        "Leave taps open after draining: water left in a bend bursts it.",
    ];

    private readonly AlarmPoint _point = board.Point(AlarmKind.Frost);

    public string Name => _point.Definition.Name;

    public bool? CanJudge { get; private set; }

    public void Observe(WatchInput input)
    {
        var coldest = double.PositiveInfinity;
        var isFitted = false;
        foreach (var channel in s_withWater)
        {
            var isPipe = channel is Channel.Outlet or Channel.ColdSupply;
            if (input.IsDrained && !isPipe)
            {
                continue;
            }

            isFitted |= input.Van.Fitted.Has(channel);
            if (input.Scan[channel].IsGood)
            {
                coldest = Math.Min(coldest, input.Scan[channel].Value);
            }
        }

        CanJudge = isFitted ? double.IsFinite(coldest) : null;
        if (CanJudge != true)
        {
            return;
        }

        var isNear = coldest <= (_point.IsPresent ? ClearCelsius : NearCelsius);
        var isComing = !input.IsDrained && input.FrostInS is { } inS && inS <= (_point.IsPresent ? NotSoonS : SoonS);
        if (_point.Observe(isNear || isComing, input.Scan.ElapsedS))
        {
            _point.Say(
                isNear
                    ? FormattableString.Invariant($"water near freezing: the coldest probe reads {coldest:0.0} °C")
                    : FormattableString.Invariant(
                        $"water will near freezing in about {input.FrostInS!.Value / 3600:0} h as it cools now"),
                s_whatToDo);
        }
    }
}
