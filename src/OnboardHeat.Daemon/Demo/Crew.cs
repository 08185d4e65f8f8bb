using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Watch;
using OnboardHeat.Simulation;

namespace OnboardHeat.Daemon.Demo;

/// <summary>The two people in the van: they answer what they are told as people do, some seconds later.</summary>
internal sealed class Crew(SimulatedVan van)
{
    /// <summary>To look at the screen and press the button.</summary>
    private const double SeesS = 25;

    /// <summary>To find a place to pull over on a pass road, engine off.</summary>
    private const double PullsOverS = 40;

    /// <summary>To get out and close both isolation valves.</summary>
    private const double ClosesValvesS = 150;

    private readonly List<(double AtS, string Target)> _toAcknowledge = [];

    /// <summary>When they stopped because of an alarm, seconds from the start; null if they never had to.</summary>
    public double? StoppedAtS { get; private set; }

    /// <summary>When they closed the valves.</summary>
    public double? ClosedAtS { get; private set; }

    public void Hear(IReadOnlyList<AlarmChange> changes)
    {
        var nowS = van.Truth.ElapsedS;
        foreach (var change in changes)
        {
            if (!change.IsRaised)
            {
                continue;
            }

            var name = change.Definition.Name;
            _toAcknowledge.Add((nowS + SeesS, change.Subject.Length == 0 ? name : $"{name}/{change.Subject}"));
            if (change.Definition.Kind == AlarmKind.CoolantLoss && StoppedAtS is null)
            {
                StoppedAtS = nowS + PullsOverS;
                ClosedAtS = nowS + ClosesValvesS;
                van.LetHappen(new Happening(StoppedAtS.Value, HappeningKind.PullsOver));
                van.LetHappen(new Happening(ClosedAtS.Value, HappeningKind.ValvesClosed));
            }
        }

        for (var i = _toAcknowledge.Count - 1; i >= 0; i--)
        {
            if (_toAcknowledge[i].AtS <= nowS)
            {
                van.Say(new PersonAction(ActionKind.Acknowledge, _toAcknowledge[i].Target, ""));
                _toAcknowledge.RemoveAt(i);
            }
        }
    }
}
