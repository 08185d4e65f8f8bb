using OnboardHeat.Core.Watch;

namespace OnboardHeat.Conventions.Tests;

/// <summary>
/// The alarms are known to people, topics and records by these names: a change here breaks what others built on them.
/// </summary>
public sealed class AlarmTableTests
{
    [Fact]
    public void AlarmTable_HasTheAgreedNamesPrioritiesAndLatches()
    {
        string[] agreed =
        [
            "coolant-loss critical latched", "tank-over-temperature critical latched",
            "coolant-over-temperature critical", "element-dry critical",
            "circulation-stopped warning", "coolant-weep warning", "water-in-tray warning", "rating-exceeded warning",
            "frost warning",
            "probe-fault warning", "cannot-judge warning", "history-damaged warning", "history-stopped warning",
            "power-low warning",
            "works-open warning", "rating-near advice", "scald-risk advice", "close-valves advice",
            "hygiene-due advice", "weak-heating advice",
            "test-due advice",
        ];

        Assert.Equal(agreed, AlarmTable.Rows.Select(
            r => $"{r.Name} {r.Priority.ToString().ToLowerInvariant()}{(r.IsLatched ? " latched" : "")}"));
    }

    [Fact]
    public void AlarmTable_HasARowForEveryKindAtItsIndex() =>
        Assert.Equal(Enum.GetValues<AlarmKind>(), AlarmTable.Rows.Select(r => r.Kind));
}
