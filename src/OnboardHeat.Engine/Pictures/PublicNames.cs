using OnboardHeat.Core.Journeys;
using OnboardHeat.Core.Screening;
using OnboardHeat.Core.Shower;
using OnboardHeat.Core.Watch;
using OnboardHeat.Engine.Ports;

namespace OnboardHeat.Engine.Pictures;

/// <summary>How enumerations are spelled wherever others read them: in lines, topics, pages and records.</summary>
public static class PublicNames
{
    /// <summary>Name of an alarm's state.</summary>
    public static string Of(AlarmState state) => state switch
    {
        AlarmState.Normal => "normal",
        AlarmState.Unacknowledged => "unacknowledged",
        AlarmState.Acknowledged => "acknowledged",
        AlarmState.ReturnedUnacknowledged => "returned-unacknowledged",
        AlarmState.Latched => "latched",
        AlarmState.Shelved => "shelved",
        AlarmState.OutOfService => "out-of-service",
        _ => throw new ArgumentOutOfRangeException(nameof(state), state, "Not a state."),
    };

    /// <summary>Name of a priority.</summary>
    public static string Of(AlarmPriority priority) => priority switch
    {
        AlarmPriority.Advice => "advice",
        AlarmPriority.Warning => "warning",
        AlarmPriority.Critical => "critical",
        _ => throw new ArgumentOutOfRangeException(nameof(priority), priority, "Not a priority."),
    };

    /// <summary>Name of how far the dates of a run can be believed.</summary>
    public static string Of(RunDating dating) => dating switch
    {
        RunDating.Trusted => "trusted",
        RunDating.DatedAfterwards => "dated-afterwards",
        RunDating.Undated => "undated",
        _ => throw new ArgumentOutOfRangeException(nameof(dating), dating, "Not a dating."),
    };

    /// <summary>Name of when a useful shower is there.</summary>
    public static string Of(ReadyKind ready) => ready switch
    {
        ReadyKind.Unknown => "unknown",
        ReadyKind.Now => "now",
        ReadyKind.At => "at",
        ReadyKind.NotAtThisRate => "not-at-this-rate",
        ReadyKind.NotHeating => "not-heating",
        _ => throw new ArgumentOutOfRangeException(nameof(ready), ready, "Not a readiness."),
    };

    /// <summary>Name of a kind of journey.</summary>
    public static string Of(JourneyType type) => type switch
    {
        JourneyType.Heating => "heating",
        JourneyType.Standing => "standing",
        JourneyType.Draw => "draw",
        JourneyType.Stop => "stop",
        _ => throw new ArgumentOutOfRangeException(nameof(type), type, "Not a journey."),
    };

    /// <summary>Name of until when the water stays usable.</summary>
    public static string Of(UntilKind until) => until switch
    {
        UntilKind.Unknown => "unknown",
        UntilKind.NowBelow => "now-below",
        UntilKind.At => "at",
        UntilKind.BeyondSevenDays => "beyond-7-days",
        _ => throw new ArgumentOutOfRangeException(nameof(until), until, "Not an end."),
    };

    /// <summary>Name of a fault; null for none.</summary>
    public static string? Of(ReadingFault fault) => fault switch
    {
        ReadingFault.None => null,
        ReadingFault.Missing => "missing",
        ReadingFault.BadCrc => "bad-crc",
        ReadingFault.PowerOn => "power-on",
        ReadingFault.AllZero => "all-zero",
        ReadingFault.OutOfRange => "out-of-range",
        ReadingFault.Stuck => "stuck",
        ReadingFault.ImplausibleStep => "implausible-step",
        ReadingFault.Stale => "stale",
        ReadingFault.Loose => "loose",
        ReadingFault.Swapped => "swapped",
        _ => throw new ArgumentOutOfRangeException(nameof(fault), fault, "Not a fault."),
    };

    /// <summary>The fault of a name; false for what names none.</summary>
    public static bool TryParseFault(ReadOnlySpan<char> name, out ReadingFault fault)
    {
        for (fault = ReadingFault.Missing; fault <= ReadingFault.Swapped; fault++)
        {
            if (name.SequenceEqual(Of(fault)))
            {
                return true;
            }
        }

        fault = ReadingFault.None;
        return false;
    }
}
