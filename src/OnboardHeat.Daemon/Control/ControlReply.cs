using OnboardHeat.Daemon.Probing;

namespace OnboardHeat.Daemon.Control;

/// <summary>The answer: one JSON object on one line.</summary>
/// <param name="Ok">Whether it was done.</param>
/// <param name="Lines">What to show, line by line.</param>
/// <param name="Bus">What hangs on the bus, for <c>probes</c>; else null.</param>
internal sealed record ControlReply(bool Ok, IReadOnlyList<string> Lines, BusSight? Bus = null)
{
    public static ControlReply Done(params IReadOnlyList<string> lines) => new(true, lines);

    public static ControlReply Refused(string why) => new(false, [why]);
}
