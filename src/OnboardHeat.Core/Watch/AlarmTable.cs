namespace OnboardHeat.Core.Watch;

/// <summary>The table of all alarms. Delays are chosen so that no limit chatters (common practice, no source, where not said otherwise).</summary>
public static class AlarmTable
{
    private static readonly AlarmDefinition[] s_rows =
    [
        new(AlarmKind.CoolantLoss, "coolant-loss", AlarmPriority.Critical, IsLatched: true, IsOfCircuit: true, OnDelayS: 0, OffDelayS: 30),
        new(AlarmKind.TankOverTemperature, "tank-over-temperature", AlarmPriority.Critical, IsLatched: true, IsOfCircuit: false, OnDelayS: 30, OffDelayS: 60),
        new(AlarmKind.CoolantOverTemperature, "coolant-over-temperature", AlarmPriority.Critical, IsLatched: false, IsOfCircuit: false, OnDelayS: 30, OffDelayS: 30),
        new(AlarmKind.ElementDry, "element-dry", AlarmPriority.Critical, IsLatched: false, IsOfCircuit: false, OnDelayS: 2, OffDelayS: 10),
        new(AlarmKind.CirculationStopped, "circulation-stopped", AlarmPriority.Warning, IsLatched: false, IsOfCircuit: true, OnDelayS: 0, OffDelayS: 60),
        new(AlarmKind.CoolantWeep, "coolant-weep", AlarmPriority.Warning, IsLatched: false, IsOfCircuit: true, OnDelayS: 0, OffDelayS: 600),
        new(AlarmKind.WaterInTray, "water-in-tray", AlarmPriority.Warning, IsLatched: false, IsOfCircuit: false, OnDelayS: 0, OffDelayS: 600),
        new(AlarmKind.RatingExceeded, "rating-exceeded", AlarmPriority.Warning, IsLatched: false, IsOfCircuit: false, OnDelayS: 10, OffDelayS: 60),
        new(AlarmKind.Frost, "frost", AlarmPriority.Warning, IsLatched: false, IsOfCircuit: false, OnDelayS: 60, OffDelayS: 600),
        new(AlarmKind.ProbeFault, "probe-fault", AlarmPriority.Warning, IsLatched: false, IsOfCircuit: false, OnDelayS: 60, OffDelayS: 120),
        new(AlarmKind.CannotJudge, "cannot-judge", AlarmPriority.Warning, IsLatched: false, IsOfCircuit: false, OnDelayS: 90, OffDelayS: 60),
        new(AlarmKind.HistoryDamaged, "history-damaged", AlarmPriority.Warning, IsLatched: false, IsOfCircuit: false, OnDelayS: 0, OffDelayS: 0),
        new(AlarmKind.HistoryStopped, "history-stopped", AlarmPriority.Warning, IsLatched: false, IsOfCircuit: false, OnDelayS: 10, OffDelayS: 10),
        new(AlarmKind.PowerLow, "power-low", AlarmPriority.Warning, IsLatched: false, IsOfCircuit: false, OnDelayS: 10, OffDelayS: 60),
        new(AlarmKind.WorksOpen, "works-open", AlarmPriority.Warning, IsLatched: false, IsOfCircuit: false, OnDelayS: 900, OffDelayS: 60),
        new(AlarmKind.RatingNear, "rating-near", AlarmPriority.Advice, IsLatched: false, IsOfCircuit: true, OnDelayS: 20, OffDelayS: 120),
        new(AlarmKind.ScaldRisk, "scald-risk", AlarmPriority.Advice, IsLatched: false, IsOfCircuit: false, OnDelayS: 60, OffDelayS: 600),
        new(AlarmKind.CloseValves, "close-valves", AlarmPriority.Advice, IsLatched: false, IsOfCircuit: true, OnDelayS: 300, OffDelayS: 900),
        new(AlarmKind.HygieneDue, "hygiene-due", AlarmPriority.Advice, IsLatched: false, IsOfCircuit: false, OnDelayS: 60, OffDelayS: 3600),
        new(AlarmKind.WeakHeating, "weak-heating", AlarmPriority.Advice, IsLatched: false, IsOfCircuit: true, OnDelayS: 300, OffDelayS: 900),
        new(AlarmKind.TestDue, "test-due", AlarmPriority.Advice, IsLatched: false, IsOfCircuit: false, OnDelayS: 0, OffDelayS: 0),
    ];

    /// <summary>Every alarm, most urgent first within its priority.</summary>
    public static IReadOnlyList<AlarmDefinition> Rows => s_rows;

    /// <summary>The row of one kind.</summary>
    public static AlarmDefinition Of(AlarmKind kind) => s_rows[(int)kind];

    /// <summary>Finds an alarm by its exact name.</summary>
    public static AlarmDefinition? Find(ReadOnlySpan<char> name)
    {
        foreach (var row in s_rows)
        {
            if (name.SequenceEqual(row.Name))
            {
                return row;
            }
        }

        return null;
    }
}
