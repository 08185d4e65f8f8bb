using System.Globalization;
using OnboardHeat.Core.Scans;

namespace OnboardHeat.Core.Watch;

/// <summary>
/// All alarm points of a van: takes what people do to them, and tells what stands and what changed in a scan.
/// </summary>
internal sealed class AlarmBoard
{
    /// <summary>How long an alarm is put aside when the person does not say (common practice, no source).</summary>
    public const double ShelveDefaultS = 8 * 3600;

    /// <summary>The longest an alarm may be put aside (common practice, no source): shelving ends by itself.</summary>
    public const double ShelveMostS = 7 * 86400;

    private readonly List<AlarmPoint> _points = [];
    private IReadOnlyList<AlarmSnapshot> _standing = [];

    /// <summary>Whether works are under way: the circuit's alarms are out of service.</summary>
    public bool IsInWorks { get; private set; }

    /// <summary>
    /// The point for an alarm and subject, made at its first use: watchers ask for theirs when they are made.
    /// </summary>
    public AlarmPoint Point(AlarmKind kind, string subject = "")
    {
        if (Find(kind, subject) is { } known)
        {
            return known;
        }

        var made = new AlarmPoint(AlarmTable.Of(kind), subject);
        _points.Add(made);
        if (IsInWorks && made.Definition.IsOfCircuit)
        {
            made.SetOutOfService(true, 0);
        }

        return made;
    }

    /// <summary>Takes one action of a person that concerns alarms; others are left alone.</summary>
    public void Take(PersonAction action, double elapsedS)
    {
        switch (action.Kind)
        {
            case ActionKind.Acknowledge:
                ForEach(action.Target, point => point.Acknowledge(elapsedS));
                break;
            case ActionKind.Shelve:
                // Without a target it concerns what a person sees: what stands now, not what may come.
                var spanS = ShelveSpanS(action.Text);
                ForEach(action.Target, point => _ = (action.Target.Length > 0 || point.IsStanding) && point.Shelve(
                    elapsedS, spanS));
                break;
            case ActionKind.Repaired:
                Point(AlarmKind.CoolantLoss).Repair(elapsedS);
                break;
            case ActionKind.WorksBegin:
                SetWorks(true, elapsedS);
                break;
            case ActionKind.WorksEnd:
                SetWorks(false, elapsedS);
                break;
        }
    }

    /// <summary>Starts or ends works mode.</summary>
    public void SetWorks(bool isOn, double elapsedS)
    {
        IsInWorks = isOn;
        foreach (var point in _points)
        {
            if (point.Definition.IsOfCircuit)
            {
                point.SetOutOfService(isOn, elapsedS);
            }
        }
    }

    /// <summary>
    /// Closes a scan: what came or went in it. The empty list is shared, so a quiet scan allocates nothing.
    /// </summary>
    public IReadOnlyList<AlarmChange> Close(double elapsedS)
    {
        List<AlarmChange>? changes = null;
        var hasChanged = false;
        foreach (var point in _points)
        {
            point.Settle(elapsedS);
            if (point.Transition is { } isRaised)
            {
                (changes ??= []).Add(new AlarmChange(point.Definition, point.Subject, isRaised, point.Because));
                point.Transition = null;
            }

            hasChanged |= point.HasChanged;
            point.HasChanged = false;
        }

        if (hasChanged)
        {
            _standing = [
                .. _points.Where(p => p.State != AlarmState.Normal).OrderByDescending(p => p.Definition.Priority)
                .ThenBy(p => p.Definition.Kind).Select(p => p.Snapshot())];
        }

        return (IReadOnlyList<AlarmChange>?)changes ?? [];
    }

    /// <summary>Alarms that are not normal, most urgent first. The same list until something changes.</summary>
    public IReadOnlyList<AlarmSnapshot> Standing => _standing;

    /// <summary>What is to be kept over a restart.</summary>
    public IReadOnlyList<KeptAlarm> Keep(double elapsedS) =>
        [.. _points.Where(p => p.IsWorthKeeping(elapsedS)).Select(p => p.Keep(elapsedS))];

    /// <summary>
    /// Goes on from what was kept. What nobody watches any more (a part or a probe that was taken out) is left behind:
    /// nobody could ever clear it. A latched alarm is kept in any case: a person owes it an answer, whoever watches.
    /// </summary>
    public void Restore(IEnumerable<KeptAlarm> kept)
    {
        foreach (var alarm in kept)
        {
            if (AlarmTable.Find(alarm.Name) is { } row)
            {
                (row.IsLatched ? Point(row.Kind, alarm.Subject) : Find(row.Kind, alarm.Subject))?.Restore(alarm);
            }
        }
    }

    private AlarmPoint? Find(AlarmKind kind, string subject)
    {
        foreach (var point in _points)
        {
            if (point.Definition.Kind == kind && point.Subject == subject)
            {
                return point;
            }
        }

        return null;
    }

    /// <summary>The span a person wrote, in minutes; zero takes the alarm back from the shelf.</summary>
    private static double ShelveSpanS(string minutesText) =>
        double.TryParse(minutesText, CultureInfo.InvariantCulture, out var minutes) && minutes >= 0
            ? Math.Min(minutes * 60, ShelveMostS)
            : ShelveDefaultS;

    private void ForEach(string target, Action<AlarmPoint> act)
    {
        foreach (var point in _points)
        {
            if (target.Length == 0 || IsNamed(point, target))
            {
                act(point);
            }
        }
    }

    /// <summary>An alarm is named with its subject, or without it for all its subjects.</summary>
    private static bool IsNamed(AlarmPoint point, string target)
    {
        var name = point.Definition.Name;
        return target == name
            || (target.Length == name.Length + 1 + point.Subject.Length
            && target.StartsWith(name, StringComparison.Ordinal)
                && target[name.Length] == '/' && target.EndsWith(point.Subject, StringComparison.Ordinal));
    }
}
