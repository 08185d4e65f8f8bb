using OnboardHeat.Core.Scans;

namespace OnboardHeat.Core.Watch;

/// <summary>Coolant, at the engine or on its way to the coil, above the limit that the owner states.</summary>
internal sealed class CoolantOverTemperatureWatcher(AlarmBoard board) : IWatcher
{
    private const double DeadbandK = 3;

    private static readonly string[] s_whatToDo =
    [
        "Take load off: slow down, heater and its fan on full.",
        "If it does not fall, stop when it is safe and let the engine idle for a minute, then engine off.",
        "Never open a hot coolant cap. Look at the level when cold.",
    ];

    private readonly AlarmPoint _point = board.Point(AlarmKind.CoolantOverTemperature);

    public string Name => _point.Definition.Name;

    public bool? CanJudge { get; private set; }

    public void Observe(WatchInput input)
    {
        var hottest = double.NegativeInfinity;
        var where = Channel.Flow;
        var isFitted = false;
        foreach (var channel in (ReadOnlySpan<Channel>)[Channel.Flow, Channel.EngineCoolant])
        {
            isFitted |= input.Van.Fitted.Has(channel);
            if (input.Scan[channel] is { IsGood: true } reading && reading.Value > hottest)
            {
                (hottest, where) = (reading.Value, channel);
            }
        }

        CanJudge = isFitted ? double.IsFinite(hottest) : null;
        if (CanJudge != true)
        {
            return;
        }

        var limit = input.Van.Circuit.CoolantMaxCelsius;
        if (_point.Observe(hottest > (_point.IsPresent ? limit - DeadbandK : limit), input.Scan.ElapsedS))
        {
            _point.Say(
                FormattableString.Invariant($"coolant at {Channels.NameOf(where)} {hottest:0.0} °C, ")
                    + FormattableString.Invariant($"limit {limit:0.0} °C, for {_point.Definition.OnDelayS:0} s"),
                s_whatToDo);
        }
    }
}
