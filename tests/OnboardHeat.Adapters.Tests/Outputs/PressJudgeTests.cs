using CsCheck;
using OnboardHeat.Outputs.Sounding;

namespace OnboardHeat.Adapters.Tests.Outputs;

public sealed class PressJudgeTests
{
    private static TimeSpan Ms(double ms) => TimeSpan.FromMilliseconds(ms);

    [Fact]
    public void PressAndRelease_IsOneShortPress()
    {
        var heard = Hear((0, true), (300, false));

        Assert.Equal([(Press.Short, 340.0)], heard);
    }

    [Fact]
    public void HeldForThreeSeconds_IsLongWhileStillHeld_AndNotShortAfter()
    {
        var heard = Hear((0, true), (5000, false));

        Assert.Equal([(Press.Long, 3000.0)], heard);
    }

    [Fact]
    public void HeldForAMinute_IsStuckOnce_AndHeardAgainAfterItsRelease()
    {
        var heard = Hear((0, true), (200_000, false), (201_000, true), (201_300, false));

        Assert.Equal([(Press.Long, 3000.0), (Press.Stuck, 60_000.0), (Press.Short, 201_340.0)], heard);
    }

    [Fact]
    public void SpikeShorterThanTheDebounce_IsNothing() => Assert.Empty(Hear((0, true), (39, false)));

    [Fact]
    public void BouncingContact_IsStillOnePress() =>
        // CsCheck prints its seed when this fails and takes it back through CsCheck_Seed.
        Gen.Select(Gen.Double[0.2, 20].Array[1, 12], Gen.Double[0.2, 20].Array[1, 12]).Sample(bounces =>
        {
            var (down, up) = bounces;
            var edges = Edges(0, down, true).Concat(Edges(1000, up, false)).ToArray();
            var heard = Hear(edges);
            return heard.Count == 1 && heard[0].Press == Press.Short;
        });

    // A contact that chatters: it changes after each of the spans and comes to rest at the level.
    private static IEnumerable<(double AtMs, bool IsDown)> Edges(double atMs, double[] spansMs, bool rest)
    {
        var level = rest;
        yield return (atMs, level);
        foreach (var span in spansMs.Concat(spansMs.Length % 2 == 0 ? [] : new[] { 1.0 }))
        {
            atMs += span;
            level = !level;
            yield return (atMs, level);
        }
    }

    // Plays edges and looks again whenever the judge asks for it, as the worker does.
    private static List<(Press Press, double AtMs)> Hear(params (double AtMs, bool IsDown)[] edges)
    {
        var judge = new PressJudge();
        var heard = new List<(Press, double)>();
        var now = TimeSpan.Zero;
        for (var i = 0; i <= edges.Length; i++)
        {
            var until = i < edges.Length ? Ms(edges[i].AtMs) : TimeSpan.FromHours(1);
            while (judge.NextLook(now) is { } wait && now + wait < until)
            {
                now += wait;
                Note(judge.Observe(edges[i - 1].IsDown, now));
            }

            now = until;
            if (i < edges.Length)
            {
                Note(judge.Observe(edges[i].IsDown, now));
            }
        }

        return heard;

        void Note(Press press)
        {
            if (press != Press.None)
            {
                heard.Add((press, now.TotalMilliseconds));
            }
        }
    }
}
