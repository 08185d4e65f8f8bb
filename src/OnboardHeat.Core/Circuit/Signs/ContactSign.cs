namespace OnboardHeat.Core.Circuit.Signs;

/// <summary>
/// The wet contact in the tray and the level switch of the coolant. Both are slow or fooled by water and by bends, so
/// each adds to what the probes say and never decides alone.
/// </summary>
internal sealed class ContactSign : ICircuitSign
{
    private const double WetNats = 3, LowNats = 4;

    /// <summary>Coolant swings in a bend; a level that stays low does not (common practice, no source).</summary>
    private const double LowForS = 10;

    /// <summary>A contact that has been so for long tells nothing of now.</summary>
    private const double NewForS = 180;

    private double _wetS, _lowS;

    public string Name => "contacts";

    public bool IsHealthy { get; private set; }

    public double StoppedNats { get; private set; }

    public double LeavingNats => StoppedNats;

    public void Observe(Loop loop)
    {
        IsHealthy = loop.IsTrayWet is not null || loop.IsCoolantLow is not null;
        _wetS = loop.IsTrayWet == true ? _wetS + loop.StepS : 0;
        _lowS = loop.IsCoolantLow == true ? _lowS + loop.StepS : 0;
        StoppedNats = (_wetS is > 0 and < NewForS ? WetNats : 0) + (_lowS is > LowForS and < NewForS ? LowNats : 0);
    }

    public string Words(Loop loop) => (_wetS > 0, _lowS > 0) switch
    {
        (true, true) => FormattableString.Invariant($"tray wet for {_wetS:0} s, coolant low for {_lowS:0} s"),
        (true, false) => FormattableString.Invariant($"tray wet for {_wetS:0} s"),
        _ => FormattableString.Invariant($"coolant low for {_lowS:0} s"),
    };
}
