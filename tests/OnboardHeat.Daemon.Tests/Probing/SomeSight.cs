using OnboardHeat.Daemon.Probing;

namespace OnboardHeat.Daemon.Tests.Probing;

/// <summary>Looks at a bus of three: flow, return, and a stranger.</summary>
internal static class SomeSight
{
    public const string Flow = "28-0000000a1c03";
    public const string Return = "28-0000000a1c04";
    public const string Stranger = "28-0000000a1c09";

    public static BusSight Of(double? flowC, double? returnC, double? strangerC = 20, double returnLearntK = 0) =>
        new(true,
    [
        new ProbeSight(Flow, ["flow"], true, flowC, flowC is null ? "missing" : "", 0, 0),
        new ProbeSight(Return, ["return"], true, returnC, returnC is null ? "missing" : "", 0, returnLearntK),
        new ProbeSight(Stranger, [], true, strangerC, strangerC is null ? "missing" : "", 0, 0),
    ]);
}
