using OnboardHeat.Core;
using OnboardHeat.Core.Scans;

namespace OnboardHeat.Engine.FirstDrive;

/// <summary>
/// The check list of the first drive, which ticks itself. It compares with the coldest moment of the run: lines that
/// were cold together are the only fair start. What is seen once stays ticked; work on the circuit or on a probe starts
/// the list anew.
/// </summary>
public sealed class FirstDriveList(IEnumerable<string> seen)
{
    /// <summary>A start above this is no cold start: which line warmed first cannot be told any more, °C.</summary>
    private const double ColdCelsius = 45;

    /// <summary>
    /// Lines further apart than this were not at rest together, kelvin; two sound probes differ by 1 K, clamped ones by
    /// more.
    /// </summary>
    private const double TogetherK = 5;

    /// <summary>A line has warmed: far above noise and offsets, and far below what any drive brings, kelvin.</summary>
    private const double WarmedK = 8;

    /// <summary>A line follows the engine, kelvin above its start.</summary>
    private const double FollowsK = 15;

    /// <summary>The tank's rise that no sun on the roof brings during a drive, kelvin.</summary>
    private const double TankRiseK = 3;

    /// <summary>
    /// Coolant hot enough to show a leak in the tray, °C, and for how long it must stay dry, seconds.
    /// </summary>
    private const double HotCelsius = 60, HotForS = 1200;

    /// <summary>Warm air and the floor move the tray slowly and by less than this, kelvin.</summary>
    private const double TrayRiseK = 8;

    private readonly HashSet<string> _seen = [.. seen];
    private readonly Dictionary<string, string> _doubts = [];
    private Start? _start;
    private double _hotSinceS = double.NaN;

    /// <summary>The steps seen, by name, in their order.</summary>
    public IReadOnlyList<string> Seen => [.. FirstDriveStep.All.Select(step => step.Name).Where(_seen.Contains)];

    /// <summary>What this run has shown to be otherwise, by the name of its step.</summary>
    public IReadOnlyDictionary<string, string> Doubts => _doubts;

    /// <summary>Takes a turn. True when the list has changed.</summary>
    public bool Observe(Turn turn)
    {
        ArgumentNullException.ThrowIfNull(turn);
        var before = _seen.Count;
        if (turn.Scan.Actions.Any(StartsAnew))
        {
            _seen.Clear();
            _doubts.Clear();
            (_start, _hotSinceS) = (null, double.NaN);
            return before > 0;
        }

        if (_seen.Count < FirstDriveStep.All.Count && turn.Picture[Channel.Flow].IsGood)
        {
            Look(turn.Picture, turn.Scan);
        }

        return _seen.Count != before;
    }

    private static bool StartsAnew(PersonAction action) => action.Kind == ActionKind.Repaired
        || (action.IsChangeMark && action.Target != "insulation");

    private void Look(Picture picture, Scan scan)
    {
        var now = Start.Of(picture);
        if (_start is not { } start || now.LinesC <= start.LinesC)
        {
            _start = now;
            return;
        }

        if (start.LinesC > ColdCelsius)
        {
            return;
        }

        LookAtLines(start, now);
        if (now.TankC - start.TankC >= TankRiseK && now.FlowC > now.TankC)
        {
            _seen.Add(FirstDriveStep.TankRises.Name);
        }

        LookAtTray(start, now, scan);
    }

    private void LookAtLines(Start start, Start now)
    {
        var (flowK, returnK) = (now.FlowC - start.FlowC, now.ReturnC - start.ReturnC);
        if (Math.Abs(start.FlowC - start.ReturnC) <= TogetherK && !_seen.Contains(FirstDriveStep.FlowFirst.Name))
        {
            if (flowK >= WarmedK && returnK < WarmedK)
            {
                _seen.Add(FirstDriveStep.FlowFirst.Name);
                _doubts.Remove(FirstDriveStep.FlowFirst.Name);
            }
            else if (returnK >= WarmedK && flowK < WarmedK)
            {
                _doubts[FirstDriveStep.FlowFirst.Name] =
                    "return warmed first: the two probes, or the two hoses, are exchanged";
            }
        }

        if (flowK >= FollowsK && returnK >= FollowsK)
        {
            _seen.Add(FirstDriveStep.BothFollow.Name);
        }
    }

    private void LookAtTray(Start start, Start now, Scan scan)
    {
        var trayK = now.TrayC - start.TrayC;
        var isWet = scan[Signal.TrayWet];
        if (isWet == true || trayK > TrayRiseK)
        {
            _doubts[FirstDriveStep.TrayStays.Name] = isWet == true
                ? "the tray is wet"
                : FormattableString.Invariant($"the tray has risen by {trayK:0.0} K");
            _hotSinceS = double.NaN;
            return;
        }

        // NaN where there is no such probe, and then only the contact can witness.
        if ((double.IsNaN(trayK) && isWet is null) || now.FlowC < HotCelsius)
        {
            return;
        }

        _hotSinceS = double.IsNaN(_hotSinceS) ? now.AtS : _hotSinceS;
        if (now.AtS - _hotSinceS >= HotForS && _seen.Add(FirstDriveStep.TrayStays.Name))
        {
            _doubts.Remove(FirstDriveStep.TrayStays.Name);
        }
    }

    /// <summary>The places of the list at one moment, °C; NaN where there is no believed reading.</summary>
    private readonly record struct Start(double AtS, double FlowC, double ReturnC, double TankC, double TrayC)
    {
        /// <summary>The warmer of the two lines: at rest is when neither has risen.</summary>
        public double LinesC => double.IsNaN(ReturnC) ? FlowC : Math.Max(FlowC, ReturnC);

        public static Start Of(Picture picture)
        {
            var (sum, count) = (0.0, 0);
            foreach (var channel in Channels.OfTank)
            {
                if (picture[channel].IsGood)
                {
                    sum += picture[channel].Value;
                    count++;
                }
            }

            return new Start(
                picture.Elapsed.TotalSeconds, ValueOf(picture, Channel.Flow), ValueOf(picture, Channel.Return),
                count > 0 ? sum / count : double.NaN, ValueOf(picture, Channel.Tray));
        }

        private static double ValueOf(Picture picture, Channel channel) =>
            picture[channel].IsGood ? picture[channel].Value : double.NaN;
    }
}
