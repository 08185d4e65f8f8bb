namespace OnboardHeat.Core.Watch;

/// <summary>The list of all watchers: a new one is added here and nowhere else.</summary>
internal static class Watchers
{
    /// <summary>Every watcher for this van, in the order they look.</summary>
    public static IWatcher[] All(VanDescription van, AlarmBoard board, LearntVan learnt)
    {
        IWatcher[] watchers =
        [
            new TankOverTemperatureWatcher(board),
            new CoolantLossWatcher(board),
            new CirculationWatcher(board),
            new CoolantOverTemperatureWatcher(board),
            new CoolantWeepWatcher(board),
            new WaterInTrayWatcher(board),
            .. van.Circuit.Parts.Select(part => new RatingWatcher(part, board)),
            new ElementDryWatcher(board),
            new ScaldRiskWatcher(board),
            new FrostWatcher(board),
            new CloseValvesWatcher(board),
            new WeakHeatingWatcher(board, learnt),
            new HygieneDueWatcher(board),
            new ProbeFaultWatcher(van, board),
            new WorksOpenWatcher(board),
            new HouseWatcher(board),
            new TestDueWatcher(board),
        ];

        // Looks at the others, so it comes last.
        return [.. watchers, new CannotJudgeWatcher(board, watchers)];
    }
}
