using OnboardHeat.Core.Scans;

namespace OnboardHeat.Core.Watch;

/// <summary>
/// Coolant is leaving the circuit. Once told it stands until a person says 'repaired' or coolant is seen to circulate
/// again for minutes: an emptied circuit gives no more evidence, and silence must not pass for repair.
/// </summary>
internal sealed class CoolantLossWatcher(AlarmBoard board) : IWatcher
{
    /// <summary>The heat balance must hold for so long, seconds, to show that the circuit is whole again.</summary>
    private const double RunsAgainS = 180;

    /// <summary>
    /// What was seen so long before the end of works, seconds, is told after it: that was no work any more.
    /// </summary>
    private const double LastOfWorksS = 60;

    private static readonly string[] s_whatToDo =
    [
        "Stop when it is safe.",
        "Engine off: without coolant it overheats within minutes.",
        "Close both isolation valves to the coil once they can be touched; what sprays is hot and under pressure.",
        "Never open a hot coolant cap.",
        "Look at both hoses, under the tank and at the engine. Drive on only when the coolant level holds, or have it "
            + "towed.",
    ];

    private readonly AlarmPoint _point = board.Point(AlarmKind.CoolantLoss);
    private bool _isRepaired;
    private double _seenInWorksS = double.NegativeInfinity;
    private string _saidInWorks = "";

    public string Name => _point.Definition.Name;

    public bool? CanJudge { get; private set; }

    public void Observe(WatchInput input)
    {
        var fitted = input.Van.Fitted;
        var loop = input.Loop;
        var sprays = loop.IsFresh(loop.Tray) || loop.IsFresh(loop.Air);
        CanJudge = fitted.Has(Channel.Flow)
            && (fitted.Has(Channel.Return) || fitted.Has(Channel.Tray) || fitted.Has(Channel.Surroundings))
            ? loop.HottestCelsius > -273 && (sprays || (loop.IsFresh(loop.Flow) && loop.IsFresh(loop.Return)))
            : null;
        _isRepaired |= WasRepaired(input.Scan.Raw.Actions);
        SeeInWorks(input);
        var wasSeen = !input.IsInWorks && input.Scan.ElapsedS - _seenInWorksS <= LastOfWorksS;
        var goesOn = _point.IsPresent && !_isRepaired && input.Test.RunsForS < RunsAgainS;
        if (_point.Observe(input.Test.IsLoss || wasSeen || goesOn, input.Scan.ElapsedS))
        {
            _isRepaired = false;
            // After a restart the emptied circuit has nothing to say: what was told then stands.
            var stands = wasSeen && !input.Test.IsLoss ? _saidInWorks : _point.Because;
            _point.Say(input.Test.IsLoss || stands.Length == 0 ? input.Test.Because(loop) : stands, s_whatToDo);
        }
    }

    /// <summary>Works quiet the alarm and not the eyes: signs of a loss may pass before somebody ends works.</summary>
    private void SeeInWorks(WatchInput input)
    {
        if (input.IsInWorks && input.Test.IsLoss)
        {
            var isNew = input.Scan.ElapsedS - _seenInWorksS > LastOfWorksS;
            _saidInWorks = isNew ? input.Test.Because(input.Loop) : _saidInWorks;
            _seenInWorksS = input.Scan.ElapsedS;
        }
    }

    private static bool WasRepaired(IReadOnlyList<PersonAction> actions)
    {
        for (var i = 0; i < actions.Count; i++)
        {
            if (actions[i].Kind == ActionKind.Repaired)
            {
                return true;
            }
        }

        return false;
    }
}
