using OnboardHeat.Core;
using OnboardHeat.Simulation;

namespace OnboardHeat.Suites;

/// <summary>Makes a van known before it is judged: three ordinary drives and two nights with closed valves.</summary>
internal static class Acquaintance
{
    public static KeptState[] Make(VanTraits van, int seed, IReadOnlyList<Kit> kits)
    {
        var kept = new KeptState[kits.Count];
        Array.Fill(kept, KeptState.Fresh);
        for (var i = 0; i < 5; i++)
        {
            // Seeds far from those of the judged drives.
            var earlier = 1_000_000 + (seed * 5) + i;
            var plan = i is 1 or 3
                ? DrivePlans.Night(earlier).With(new Happening(0, HappeningKind.ValvesClosed, 1e9))
                : DrivePlans.Mixed(earlier);
            var driven = new SimulatedVan(van, plan, earlier);
            var watchers = kits.Select((kit, k) => new Watcher(kit, van, kept[k])).ToArray();
            while (driven.Step())
            {
                foreach (var watcher in watchers)
                {
                    watcher.Observe(driven.Scan);
                }
            }

            for (var k = 0; k < kits.Count; k++)
            {
                kept[k] = new KeptState { Learnt = watchers[k].Monitor.Keep().Learnt };
            }
        }

        return kept;
    }
}
