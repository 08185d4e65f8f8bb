using OnboardHeat.Core.Scans;

namespace OnboardHeat.Core.Watch;

/// <summary>
/// The daemon's own troubles: a record that stopped or was damaged, a supply that dips. What it needs is always there.
/// </summary>
internal sealed class HouseWatcher(AlarmBoard board) : IWatcher
{
    private static readonly string[] s_stoppedToDo =
    [
        "Warnings go on; what happens now is kept for some hours only.",
        "Free space on the card, or have it looked at: a card that turns read-only is worn out.",
    ];

    private static readonly string[] s_damagedToDo =
    [
        "Nothing to do for the drive: recording goes on in a new file, the damaged one is set aside and kept.",
        "Back the record up, and see whether the card or the supply is failing.",
    ];

    private static readonly string[] s_powerToDo =
    [
        "See to the supply of the computer: its cable, its converter, the leisure battery.",
        "Probes fail first when the supply dips: readings may go missing.",
    ];

    private static readonly string[] s_selfTestToDo =
    [
        "Do not count on being warned: look after tray, hoses and temperature gauge yourself.",
        "Start the computer anew; if it comes again, read the log and have it looked at.",
    ];

    private readonly AlarmPoint _stopped = board.Point(AlarmKind.HistoryStopped);
    private readonly AlarmPoint _damaged = board.Point(AlarmKind.HistoryDamaged);
    private readonly AlarmPoint _power = board.Point(AlarmKind.PowerLow);
    private readonly AlarmPoint _selfTest = board.Point(AlarmKind.CannotJudge, "self-test");
    private HouseReport _told = HouseReport.Well;

    public string Name => _stopped.Definition.Name;

    public bool? CanJudge => true;

    public void Observe(WatchInput input)
    {
        var house = input.Scan.Raw.House;
        var elapsedS = input.Scan.ElapsedS;
        var isNews = !ReferenceEquals(house, _told);
        _told = house;
        Tell(_stopped, house.HistoryStopped, s_stoppedToDo, elapsedS, isNews);
        Tell(_damaged, house.HistoryDamaged, s_damagedToDo, elapsedS, isNews);
        Tell(_selfTest, house.SelfTestFailed, s_selfTestToDo, elapsedS, isNews);
        if (_power.Observe(house.IsPowerLow, elapsedS))
        {
            _power.Say("the computer's supply dips below what it needs", s_powerToDo);
        }
    }

    private static void Tell(AlarmPoint point, string because, string[] whatToDo, double elapsedS, bool isNews)
    {
        var holds = because.Length > 0;
        if (point.Observe(holds, elapsedS) || (isNews && holds && point.IsPresent && because != point.Because))
        {
            point.Say(because, whatToDo);
        }
    }
}
