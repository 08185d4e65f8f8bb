using System.Globalization;

namespace OnboardHeat.Core.Works;

/// <summary>Puts works into sentences for the person with coolant on their hands.</summary>
internal static class WorksWords
{
    /// <summary>After so long, seconds, whoever works is asked whether they still do (owner's rule).</summary>
    public const double AskAfterS = 4 * 3600;

    public static IReadOnlyList<string> Of(WorksReport report)
    {
        if (!report.IsUnderWay)
        {
            return report.AsksWhatChanged
                ? ["Works have ended. What was changed: hoses, insulation, coil, probe, coolant, or nothing?"]
                : [];
        }

        var words = new List<string> { Standing(report) };
        if (report.AgeS >= AskAfterS)
        {
            words.Add("Still at it? If not, end works: only then is a loss of coolant told again.");
        }

        if (report.Bleeding is not (BleedingStep.EngineOff or BleedingStep.CannotTell))
        {
            words.Add($"Flow line {Of(report.Flow)}, return line {Of(report.Return)}.");
        }

        words.Add(Of(report.Bleeding, report));
        return words;
    }

    private static string Standing(WorksReport report)
    {
        var age = report.AgeS < 5400
            ? string.Create(CultureInfo.InvariantCulture, $"{report.AgeS / 60:0} min")
            : string.Create(CultureInfo.InvariantCulture, $"{report.AgeS / 3600:0.0} h");
        var since = report.IsFromBeforeRestart ? ", since before the computer was started" : "";
        return $"Works on the circuit for {age}{since}: the circuit is not watched, nothing is learnt.";
    }

    private static string Of(LineWarmth line) => line switch
    {
        LineWarmth.Warm => "warm",
        LineWarmth.Cold => "cold",
        _ => "not known",
    };

    private static string Of(BleedingStep step, WorksReport report) => step switch
    {
        BleedingStep.EngineOff => "Engine off: nothing is pumped. Let it cool before a cap or a joint is opened.",
        BleedingStep.WarmingUp => "Neither line is warm yet.",
        BleedingStep.OneLineOnly when report.Flow == LineWarmth.Warm =>
            "The flow arrives and does not come back: air in the coil, or a valve closed.",
        BleedingStep.OneLineOnly => "Only the return is warm: the lines may be connected the other way round.",
        BleedingStep.AirMoving => "Flow and return hunt: air is still moving. Go on bleeding; watch the level.",
        BleedingStep.Following => Following(report),
        BleedingStep.Circulating =>
            $"Circulation established: heat carried for {Text(report.CirculatesForS / 60)} min."
            + " Check the level when cold.",
        _ => "Bleeding cannot be followed: probes on both lines are needed.",
    };

    private static string Following(WorksReport report)
    {
        if (report.CirculatesForS > 0)
        {
            return $"The return follows the flow; heat has been carried for {Text(report.CirculatesForS)} s"
                + $" of {Text(Works.Bleeding.EstablishedS)} s.";
        }

        return report.CanShowHeat
            ? "Both lines are warm; the tank does not show the heat yet."
            : "Both lines are warm; the tank is nearly as warm, so that it cannot show whether heat arrives.";
    }

    private static string Text(double whole) => whole.ToString("0", CultureInfo.InvariantCulture);
}
