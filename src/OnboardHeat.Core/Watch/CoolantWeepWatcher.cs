using OnboardHeat.Core.Circuit;
using OnboardHeat.Core.Scans;

namespace OnboardHeat.Core.Watch;

/// <summary>
/// A slow loss: warm drips in the tray, or a level that stays low, while the circuit still goes round. Silent once a
/// loss is told.
/// </summary>
internal sealed class CoolantWeepWatcher(AlarmBoard board) : IWatcher
{
    /// <summary>
    /// A level that stays low so long, seconds, is no bend and no slope of the road (common practice, no source).
    /// </summary>
    private const double LowForS = 120;

    private static readonly string[] s_whatToDo =
    [
        "At the next stop, engine off: look along both hoses and under the tank for drips; what drips may be hot.",
        "Watch the coolant level and the vehicle's own temperature gauge; never open a hot coolant cap.",
        "Coloured or sweet-smelling: coolant. Tighten or renew the joint when cold. Clear: look at the water fittings.",
    ];

    private readonly AlarmPoint _point = board.Point(AlarmKind.CoolantWeep);
    private readonly AlarmPoint _loss = board.Point(AlarmKind.CoolantLoss);
    private readonly Drip _drip = new();
    private double _lowS;

    public string Name => _point.Definition.Name;

    public bool? CanJudge { get; private set; }

    public void Observe(WatchInput input)
    {
        var loop = input.Loop;
        var fitted = input.Van.Fitted;
        var canSeeDrips = fitted.Has(Channel.Tray) && fitted.Has(Channel.Surroundings) && fitted.Has(Channel.Flow);
        CanJudge = canSeeDrips || fitted.Has(Signal.CoolantLow)
            ? (loop.IsFresh(loop.Tray) && loop.IsFresh(loop.Air)) || loop.IsCoolantLow is not null
            : null;
        _drip.Observe(loop);
        _lowS = loop.IsCoolantLow == true ? _lowS + loop.StepS : 0;
        var isLow = _lowS >= LowForS;
        if (_point.Observe((_drip.Holds || isLow) && !_loss.IsStanding && !input.Test.IsLoss, input.Scan.ElapsedS))
        {
            _point.Say(_drip.Holds
                ? FormattableString.Invariant($"tray {_drip.GainK:0.0} K warmer than the air leaves it, ")
                    + FormattableString.Invariant($"for {_drip.AgeS:0} s, with coolant at {loop.HottestCelsius:0} °C")
                : FormattableString.Invariant($"coolant level low for {_lowS:0} s"),
                s_whatToDo);
        }
    }
}
