using System.Globalization;
using OnboardHeat.Core.Scans;

namespace OnboardHeat.Limits.Daemons;

/// <summary>What goes wrong in one case, in seconds of the play; null where it does not.</summary>
internal sealed record ChaosPlan
{
    public double? KillAtS { get; private init; }

    public double? FullFromS { get; private init; }

    public (double FromS, double ToS, Channel Channel)? Hang { get; private init; }

    public (double FromS, double ToS)? BrokerDown { get; private init; }

    /// <summary>At least one thing, mostly several.</summary>
    public static ChaosPlan Make(Random random)
    {
        // Any probe may hang but the tray's: that one is the witness of this trial.
        Channel[] others = [.. ChaosDrive.Fitted.Where(channel => channel != Channel.Tray)];
        while (true)
        {
            var hangFrom = Between(random, 4, 30);
            var downFrom = Between(random, 4, 25);
            var plan = new ChaosPlan
            {
                KillAtS = random.NextDouble() < 0.7 ? Between(random, 4, 50) : null,
                FullFromS = random.NextDouble() < 0.4 ? Between(random, 2, 30) : null,
                Hang = random.NextDouble() < 0.5
                ? (hangFrom, hangFrom + Between(random, 5, 25), others[random.Next(others.Length)]) : null,
                BrokerDown = random.NextDouble() < 0.6 ? (downFrom, downFrom + Between(random, 10, 35)) : null,
            };
            if (plan.KillAtS is not null || plan.FullFromS is not null || plan.Hang is not null
                || plan.BrokerDown is not null)
            {
                return plan;
            }
        }
    }

    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"kill {KillAtS:0.0}, disk full from {FullFromS:0.0}, {Hang?.Channel} hangs {Hang?.FromS:0.0} to"
            + $" {Hang?.ToS:0.0},"
        + $" broker down {BrokerDown?.FromS:0.0} to {BrokerDown?.ToS:0.0}");

    private static double Between(Random random, double from, double to) => from + (random.NextDouble() * (to - from));
}
