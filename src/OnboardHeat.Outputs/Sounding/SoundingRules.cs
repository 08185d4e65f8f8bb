using OnboardHeat.Core;
using OnboardHeat.Core.Watch;
using OnboardHeat.Engine.Options;

namespace OnboardHeat.Outputs.Sounding;

/// <summary>
/// Which alarms may be heard. Advice never: it must not wake two sleepers. Warnings with the engine on, when somebody
/// sits at the wheel; frost and the record by option at any time. Critical always. An acknowledgement silences, and a
/// state that nobody acknowledged goes on sounding while it is held, even when its condition has gone.
/// </summary>
internal sealed class SoundingRules(OutputOptions options)
{
    /// <summary>The most urgent priority that sounds; null: silence.</summary>
    public AlarmPriority? Sounds(Picture picture)
    {
        AlarmPriority? most = null;
        foreach (var alarm in picture.Alarms)
        {
            if (IsHeard(alarm, picture.Circuit.IsEngineRunning == true) && !(most >= alarm.Definition.Priority))
            {
                most = alarm.Definition.Priority;
            }
        }

        return most;
    }

    /// <summary>What the lamp shows: sounding or not, it shows warnings until they are normal again.</summary>
    public static LampSign Shows(Picture picture)
    {
        var sign = picture.IsInWorks ? LampSign.Works : LampSign.Dark;
        foreach (var alarm in picture.Alarms)
        {
            var shown = SignOf(alarm);
            sign = shown > sign ? shown : sign;
        }

        return sign;
    }

    private bool IsHeard(AlarmSnapshot alarm, bool isEngineRunning) => IsUnseen(alarm) && alarm.Definition switch
    {
        { Priority: AlarmPriority.Critical } => true,
        { Priority: AlarmPriority.Advice } => false,
        { Kind: AlarmKind.Frost } when options.FrostSounds => true,
        { Kind: AlarmKind.HistoryDamaged or AlarmKind.HistoryStopped } when options.HistorySounds => true,
        _ => isEngineRunning,
    };

    private static bool IsUnseen(AlarmSnapshot alarm) =>
        !alarm.IsAcknowledged && alarm.State is (AlarmState.Unacknowledged or AlarmState.Latched);

    private static LampSign SignOf(AlarmSnapshot alarm) => (alarm.Definition.Priority, alarm.State) switch
    {
        (AlarmPriority.Advice, _) or (_, AlarmState.Shelved or AlarmState.OutOfService or AlarmState.Normal) =>
            LampSign.Dark,
        (AlarmPriority.Critical, _) when IsUnseen(alarm) => LampSign.Critical,
        _ when IsUnseen(alarm) => LampSign.Warning,
        _ => LampSign.Seen,
    };
}
