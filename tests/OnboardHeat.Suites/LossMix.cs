using OnboardHeat.Simulation;

namespace OnboardHeat.Suites;

/// <summary>
/// Which kind of drive comes when: 28 in a round, eight ordinary, seven losses, a weep, and every innocent disturbance
/// once.
/// </summary>
internal static class LossMix
{
    private static readonly ScenarioKind[] s_round = Round();

    /// <summary>Kinds after whose event a stopped circulation is true.</summary>
    public static bool StopsFlow(ScenarioKind kind) => kind is ScenarioKind.TankFlowHose or ScenarioKind.TankReturnHose
        or ScenarioKind.EngineHose or ScenarioKind.SplitHose
        or ScenarioKind.Weep or ScenarioKind.ValvesClosed or ScenarioKind.AirLock
        or ScenarioKind.PumpSlips;

    /// <summary>Kinds in which coolant is lost.</summary>
    public static bool LosesCoolant(ScenarioKind kind) =>
        kind == ScenarioKind.Weep || Scenarios.Failures.Contains(kind);

    public static ScenarioKind KindOf(int number) => s_round[number % s_round.Length];

    private static ScenarioKind[] Round()
    {
        ScenarioKind[] losses =
        [
            ScenarioKind.TankFlowHose, ScenarioKind.TankReturnHose, ScenarioKind.EngineHose, ScenarioKind.Weep,
            ScenarioKind.TankFlowHose,
            ScenarioKind.TankReturnHose, ScenarioKind.EngineHose, ScenarioKind.SplitHose,
        ];
        List<ScenarioKind> round = [];
        for (var i = 0; i < losses.Length; i++)
        {
            round.Add(ScenarioKind.Ordinary);
            round.Add(losses[i]);
        }

        foreach (var kind in Scenarios.Innocent)
        {
            if (kind != ScenarioKind.Ordinary)
            {
                round.Add(kind);
            }
        }

        return [.. round];
    }
}
