using OnboardHeat.Core.Scans;

namespace OnboardHeat.Core.Watch;

/// <summary>A tank probe within 2 K of the relief valve's temperature.</summary>
internal sealed class TankOverTemperatureWatcher(AlarmBoard board) : IWatcher
{
    private const double BelowReliefK = 2;
    private const double DeadbandK = 5;

    private static readonly string[] s_whatToDo =
    [
        "Stop when it is safe.",
        "Draw hot water off with care: it scalds. Let the engine idle or stop it so that no more heat comes.",
        "Close the isolation valves to the coil once they can be touched.",
        "Leave the relief valve alone; have it looked at by a licensed fitter if it opened.",
    ];

    private readonly AlarmPoint _point = board.Point(AlarmKind.TankOverTemperature);

    public string Name => _point.Definition.Name;

    public bool? CanJudge { get; private set; }

    public void Observe(WatchInput input)
    {
        var hottest = double.NegativeInfinity;
        foreach (var channel in Channels.OfTank)
        {
            var reading = input.Scan[channel];
            if (reading.IsGood)
            {
                hottest = Math.Max(hottest, reading.Value);
            }
        }

        CanJudge = input.Van.Fitted.HasTankProbe ? double.IsFinite(hottest) : null;
        if (CanJudge != true)
        {
            return;
        }

        var limit = input.Van.Tank.ReliefCelsius - BelowReliefK;
        var holds = hottest >= (_point.IsPresent ? limit - DeadbandK : limit);
        if (_point.Observe(holds, input.Scan.ElapsedS))
        {
            _point.Say(
                FormattableString.Invariant(
                    $"tank at {hottest:0.0} °C, relief valve opens at {input.Van.Tank.ReliefCelsius:0.0} °C"),
                s_whatToDo);
        }
    }
}
