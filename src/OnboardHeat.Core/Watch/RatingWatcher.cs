using OnboardHeat.Core.Circuit;

namespace OnboardHeat.Core.Watch;

/// <summary>
/// One part and its own rating: the advice while it is on course for it, the warning once it is hotter.
/// </summary>
internal sealed class RatingWatcher(CircuitPart part, AlarmBoard board) : IWatcher
{
    private const double DeadbandK = 2;

    /// <summary>
    /// Sooner than this the advice is of no use to a driver, seconds; and the fall or rise that ends the course.
    /// </summary>
    private const double HorizonS = 600;

    private static readonly string[] s_exceededToDo =
    [
        "Take heat off the part: close the isolation valves to the coil, or stop when it is safe, engine off.",
        "Do not touch it; a softened hose under pressure can come off.",
        "Fit a part rated for the coolant's temperature before the next drive.",
    ];

    private static readonly string[] s_nearToDo =
    [
        "Close the isolation valves to the coil before it is reached, or take load off the engine.",
        "Check the rating in the configuration; fit a part rated for the coolant's temperature.",
    ];

    /// <summary>A part this much hotter than was told is told again, K.</summary>
    private const double HotterK = 1;

    private readonly AlarmPoint _exceeded = board.Point(AlarmKind.RatingExceeded, part.Id);
    private readonly AlarmPoint _near = board.Point(AlarmKind.RatingNear, part.Id);
    private readonly WarmUpCourse _course = new();
    private double _highest, _toldHighest, _aboveSinceS;
    private int _toldMinutes;

    public string Name => _exceeded.Definition.Name;

    public bool? CanJudge { get; private set; }

    public void Observe(WatchInput input)
    {
        var scan = input.Scan;
        CanJudge = input.Van.Fitted.Has(part.On) ? scan[part.On].IsGood : null;
        if (CanJudge != true)
        {
            return;
        }

        var celsius = scan[part.On].Value;
        var isOver = celsius > (_exceeded.IsPresent ? part.MaxCelsius - DeadbandK : part.MaxCelsius);
        ObserveExceeded(isOver, scan.ElapsedS, celsius);
        ObserveNear(isOver, scan.ElapsedS, celsius, input.Loop.IsEngineOn != false);
    }

    private void ObserveExceeded(bool isOver, double elapsedS, double celsius)
    {
        _aboveSinceS = isOver ? _aboveSinceS : elapsedS;
        _highest = isOver ? Math.Max(_highest, celsius) : double.NegativeInfinity;
        var wantsWords = _exceeded.Observe(isOver, elapsedS);
        if (wantsWords || (_exceeded.IsPresent && _highest >= _toldHighest + HotterK))
        {
            _toldHighest = _highest;
            var aboveK = _highest - part.MaxCelsius;
            _exceeded.Say(
                FormattableString.Invariant($"{part.Name} at {celsius:0.0} °C, {aboveK:0.0} K above its rating of ")
                    + FormattableString.Invariant($"{part.MaxCelsius:0} °C, for {elapsedS - _aboveSinceS:0} s"),
                s_exceededToDo);
        }
    }

    private void ObserveNear(bool isOver, double elapsedS, double celsius, bool mayBeOn)
    {
        _course.Observe(elapsedS, celsius);
        var leftS = _course.SecondsTo(part.MaxCelsius);
        var isNear = mayBeOn && (isOver || leftS < (_near.IsPresent ? 2 * HorizonS : HorizonS));
        var wantsWords = _near.Observe(isNear, elapsedS);
        var minutes = isOver ? 0 : (int)Math.Max(1, Math.Round(Math.Min(leftS, 2 * HorizonS) / 60));
        if (wantsWords || (_near.IsPresent && isNear && minutes != _toldMinutes))
        {
            _toldMinutes = minutes;
            _near.Say(
                FormattableString.Invariant($"{part.Name} at {celsius:0.0} °C, its rating is {part.MaxCelsius:0} °C: ")
                    + When(minutes),
                s_nearToDo);
        }
    }

    private string When(int minutes) => minutes switch
    {
        0 => "reached",
        1 => FormattableString.Invariant($"reached in about 1 minute at {_course.RiseKPerMin:0.0} K/min"),
        _ => FormattableString.Invariant($"reached in about {minutes} minutes at {_course.RiseKPerMin:0.0} K/min"),
    };
}
