using System.Globalization;
using OnboardHeat.Core.Watch;

namespace OnboardHeat.Daemon.Demo;

/// <summary>The closing words: what really happened, what was told when, and what was not.</summary>
internal sealed class DemoClosing(DemoRecord record, Crew crew, DateTimeOffset start, int width)
{
    private const string Further = "           ";

    private readonly Sheet _sheet = new(width, int.MaxValue);

    public string Write(bool isWhole)
    {
        _sheet.Add(isWhole ? "What happened, and what was told"
            : $"Ended early, at {Words.Clock(record.Last)}. Until then:");
        Hose();
        Failure();
        Showers();
        Others();
        _sheet.Add("The van was simulated; the monitor that judged it is the one that runs on the road.");
        return _sheet.Written();
    }

    private void At(string text) => _sheet.Wrap("- ", text, Further);

    private void More(string text) => _sheet.Wrap(Further, text, Further);

    private void Hose()
    {
        if (record.HosePassedRating is not { } passed)
        {
            At($"The hose fitted by hand never read {DemoDay.HoseMaxCelsius:0} °C, its rating.");
            return;
        }

        At($"{Words.Clock(passed.At)} The hose fitted by hand passed its {DemoDay.HoseMaxCelsius:0} °C; "
            + $"hottest of the day {Words.Celsius(record.HoseMostCelsius)}.");
        More(First(AlarmKind.RatingNear) is { } near && near.At < passed.At
            ? $"Told {Words.Span(passed.At - near.At)} before ({near.Change.Because})."
            : "NOT told before it was reached.");
        More(First(AlarmKind.RatingExceeded) is { } over
            ? $"Told as exceeded {Words.Span(over.At - passed.At)} after."
            : "NOT told as exceeded.");
    }

    private void Failure()
    {
        if (record.FailedAt is not { } failed)
        {
            return;
        }

        At($"{Words.Clock(failed)} The flow hose came off at the tank.");
        var isTold = false;
        foreach (var told in record.Told)
        {
            if (told.Change.Definition.Kind is AlarmKind.CoolantLoss or AlarmKind.CirculationStopped
                && told.At >= failed)
            {
                isTold |= told.Change.Definition.Kind == AlarmKind.CoolantLoss;
                More(string.Create(CultureInfo.InvariantCulture,
                    $"{told.Change.Definition.Name} told {Words.Span(told.At - failed)} after, "
                    + $"{told.LostLitres:0.0} litres gone by then: {told.Change.Because}."));
            }
        }

        if (!isTold)
        {
            More("coolant-loss was NOT told.");
        }

        if (crew.StoppedAtS is { } stopped && start.AddSeconds(stopped) <= record.Last)
        {
            var closed = crew.ClosedAtS is { } at && start.AddSeconds(at) <= record.Last
                ? $", and had closed both valves by {Words.Clock(start.AddSeconds(at))}"
                : "";
            At($"{Words.Clock(start.AddSeconds(stopped))} The two stopped, engine off{closed}.");
        }

        More($"Hottest coolant at the engine: {Words.Celsius(record.EngineMostCelsius)}.");
    }

    private void Showers()
    {
        if (record.ShowerBegun is { } begun)
        {
            At($"{Words.Clock(begun.At)} Shower by the lake: {Words.Minutes(begun.Told)} minutes told, "
                + $"{Words.Minutes(begun.True)} were there.");
        }

        if (record.Showers.Count > 0)
        {
            var errors = record.Showers.Select(s => Math.Abs(s.Told - s.True)).Order().ToList();
            var inside = record.Showers.Count(s => s.True >= s.Low - 1e-9 && s.True <= s.High + 1e-9);
            At($"Minutes of shower, asked {record.Showers.Count} times: "
                + $"half of the errors under {Words.Minutes(errors[errors.Count / 2])} min, the largest "
                + $"{Words.Minutes(errors[^1])}; the truth was inside the range {inside} times.");
        }
    }

    private void Others()
    {
        var others = record.Told.Where(t => !IsAccountedFor(t)).ToList();
        var early = others
            .Where(t => t.Change.Definition.Kind is AlarmKind.CoolantLoss or AlarmKind.CirculationStopped).ToList();
        foreach (var told in early)
        {
            At($"{Words.Clock(told.At)} {told.Change.Definition.Name} was told although nothing had failed: "
                + $"{told.Change.Because}.");
        }

        var rest = others.Except(early).GroupBy(t => Name(t.Change))
            .Select(g => g.Count() == 1 ? g.Key : $"{g.Key} ({g.Count()} times)").ToList();
        if (rest.Count > 0)
        {
            At($"Told besides: {string.Join(", ", rest)}.");
        }
    }

    private bool IsAccountedFor(TimedAlarm told) => told.Change.Definition.Kind switch
    {
        AlarmKind.RatingNear or AlarmKind.RatingExceeded => true,
        AlarmKind.CoolantLoss or AlarmKind.CirculationStopped => told.At >= record.FailedAt,
        _ => false,
    };

    private TimedAlarm? First(AlarmKind kind)
    {
        foreach (var told in record.Told)
        {
            if (told.Change.Definition.Kind == kind)
            {
                return told;
            }
        }

        return null;
    }

    private static string Name(AlarmChange change) =>
        change.Subject.Length == 0 ? change.Definition.Name : $"{change.Definition.Name}/{change.Subject}";
}
