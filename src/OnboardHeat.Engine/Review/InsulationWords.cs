using System.Globalization;
using OnboardHeat.Core.Journeys;

namespace OnboardHeat.Engine.Review;

/// <summary>Says what the nights tell of the lagging, as pages and reports show it.</summary>
public static class InsulationWords
{
    /// <summary>The answer as one or two sentences.</summary>
    public static string Of(InsulationAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        var rests = $"{Nights(answer.Before.Count)} before and {Nights(answer.After.Count)} after";
        if (answer.DifferenceWPerK is not { } difference)
        {
            return $"Not enough nights to say: {rests} can be used, and each side needs one at least.";
        }

        var means = Text(
            $"The tank lost {answer.BeforeWPerK:0.00} W/K before and loses {answer.AfterWPerK:0.00} W/K now");
        if (answer is not { LowWPerK: { } low, HighWPerK: { } high })
        {
            return $"Not enough nights to say. {means}, but with {rests} nobody knows how much nights differ by "
                + $"chance.";
        }

        var interval =
            Text($"{difference:+0.00;-0.00;0.00} W/K, 90 % interval {low:+0.00;-0.00;0.00} to {high:+0.00;-0.00;0.00}");
        return answer.Verdict switch
        {
            InsulationVerdict.Better => $"Yes, it is better. {means}: {interval}. This rests on {rests}.",
            InsulationVerdict.Worse => $"No, it is worse. {means}: {interval}. This rests on {rests}.",
            _ => $"No difference can be told. {means}: {interval}, which holds zero. This rests on {rests}.",
        };
    }

    /// <summary>Why a night was left out, as a person reads it.</summary>
    public static string Of(NightReason why) => why switch
    {
        NightReason.Draw => "water was drawn from the tank",
        NightReason.ValvesOpen => "the valves to the coil were open",
        NightReason.Circulation => "coolant turned by itself and took heat out",
        NightReason.Element => "the element came on",
        NightReason.TooShort => "shorter than 6 hours",
        NightReason.TooCool => "less than 15 K above the surroundings at the start",
        NightReason.SurroundingsUnknown => "the surroundings were not known",
        NightReason.NotCooling => "the tank did not cool by its probes",
        _ => throw new ArgumentOutOfRangeException(nameof(why), why, "Not a reason."),
    };

    /// <summary>The name of a verdict.</summary>
    public static string NameOf(InsulationVerdict verdict) => verdict switch
    {
        InsulationVerdict.Better => "better",
        InsulationVerdict.Worse => "worse",
        InsulationVerdict.NoDifferenceSeen => "no-difference-seen",
        _ => "not-enough-nights",
    };

    private static string Nights(int count) => count == 1 ? "1 night" : $"{count} nights";

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
