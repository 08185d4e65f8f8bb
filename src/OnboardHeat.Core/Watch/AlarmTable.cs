namespace OnboardHeat.Core.Watch;

/// <summary>
/// The table of all alarms: name, priority, on-delay and off-delay in seconds. Delays are chosen so that no limit
/// chatters (common practice, no source, where not said otherwise).
/// </summary>
public static class AlarmTable
{
    private static readonly AlarmDefinition[] s_rows =
    [
        Row(AlarmKind.CoolantLoss, "coolant-loss", AlarmPriority.Critical, 0, 30, isLatched: true, isOfCircuit: true),
        Row(AlarmKind.TankOverTemperature, "tank-over-temperature", AlarmPriority.Critical, 30, 60, isLatched: true),
        Row(AlarmKind.CoolantOverTemperature, "coolant-over-temperature", AlarmPriority.Critical, 30, 30),
        Row(AlarmKind.ElementDry, "element-dry", AlarmPriority.Critical, 2, 10),
        Row(AlarmKind.CirculationStopped, "circulation-stopped", AlarmPriority.Warning, 0, 60, isOfCircuit: true),
        Row(AlarmKind.CoolantWeep, "coolant-weep", AlarmPriority.Warning, 0, 600, isOfCircuit: true),
        Row(AlarmKind.WaterInTray, "water-in-tray", AlarmPriority.Warning, 0, 600),
        Row(AlarmKind.RatingExceeded, "rating-exceeded", AlarmPriority.Warning, 10, 60),
        Row(AlarmKind.Frost, "frost", AlarmPriority.Warning, 60, 600),
        Row(AlarmKind.ProbeFault, "probe-fault", AlarmPriority.Warning, 60, 120),
        Row(AlarmKind.CannotJudge, "cannot-judge", AlarmPriority.Warning, 90, 60),
        Row(AlarmKind.HistoryDamaged, "history-damaged", AlarmPriority.Warning, 0, 0),
        Row(AlarmKind.HistoryStopped, "history-stopped", AlarmPriority.Warning, 10, 10),
        Row(AlarmKind.PowerLow, "power-low", AlarmPriority.Warning, 10, 60),
        Row(AlarmKind.WorksOpen, "works-open", AlarmPriority.Warning, 900, 60),
        Row(AlarmKind.RatingNear, "rating-near", AlarmPriority.Advice, 20, 120, isOfCircuit: true),
        Row(AlarmKind.ScaldRisk, "scald-risk", AlarmPriority.Advice, 60, 600),
        Row(AlarmKind.CloseValves, "close-valves", AlarmPriority.Advice, 300, 900, isOfCircuit: true),
        Row(AlarmKind.HygieneDue, "hygiene-due", AlarmPriority.Advice, 60, 3600),
        Row(AlarmKind.WeakHeating, "weak-heating", AlarmPriority.Advice, 300, 900, isOfCircuit: true),
        Row(AlarmKind.TestDue, "test-due", AlarmPriority.Advice, 0, 0),
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

    private static AlarmDefinition Row(
        AlarmKind kind, string name, AlarmPriority priority, double onDelayS, double offDelayS,
        bool isLatched = false, bool isOfCircuit = false) =>
        new(kind, name, priority, isLatched, isOfCircuit, onDelayS, offDelayS);
}
