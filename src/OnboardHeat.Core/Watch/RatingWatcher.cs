using OnboardHeat.Core.Circuit;

namespace OnboardHeat.Core.Watch;

/// <summary>One part and its own rating: the advice while it is on course for it, the warning once it is hotter.</summary>
internal sealed class RatingWatcher(CircuitPart part, AlarmBoard board) : IWatcher
{
    private const double DeadbandK = 2;

    /// <summary>Sooner than this the advice is of no use to a driver, seconds; and the fall or rise that ends the course.</summary>
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

    private readonly AlarmPoint _exceeded = board.Point(AlarmKind.RatingExceeded, part.Id);
    private readonly AlarmPoint _near = board.Point(AlarmKind.RatingNear, part.Id);
    private readonly WarmUpCourse _course = new();
    private double _highest, _aboveSinceS;

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
        _aboveSinceS = isOver ? _aboveSinceS : scan.ElapsedS;
        _highest = isOver ? Math.Max(_highest, celsius) : double.NegativeInfinity;
        if (_exceeded.Observe(isOver, scan.ElapsedS))
        {
            _exceeded.Say(
                FormattableString.Invariant(
                    $"{part.Name} at {celsius:0.0} °C, {_highest - part.MaxCelsius:0.0} K above its rating of {part.MaxCelsius:0} °C, for {scan.ElapsedS - _aboveSinceS:0} s"),
                s_exceededToDo);
        }

        _course.Observe(scan.ElapsedS, celsius);
        var leftS = _course.SecondsTo(part.MaxCelsius);
        var isNear = input.Loop.IsEngineOn != false && (isOver || leftS < (_near.IsPresent ? 2 * HorizonS : HorizonS));
        if (_near.Observe(isNear, scan.ElapsedS))
        {
            _near.Say(
                FormattableString.Invariant(
                    $"{part.Name} at {celsius:0.0} °C rises {_course.RiseKPerMin:0.0} K/min: its rating of {part.MaxCelsius:0} °C in about {Math.Max(1, leftS / 60):0} minutes"),
                s_nearToDo);
        }
    }
}
