using OnboardHeat.Adapters.Tests.History;
using OnboardHeat.Core.Scans;
using OnboardHeat.History;
using OnboardHeat.History.Files;

namespace OnboardHeat.Limits;

/// <summary>
/// Cuts the power at random moments of writing, packing, checkpoints and new months, and looks at what is left.
/// </summary>
internal static class PowerCuts
{
    private const int Minutes = 40;

    public static int Run(int seed, int cases)
    {
        int lost = 0, unreadable = 0, wrong = 0, alarmed = 0, tried = 0;
        for (var round = 0; tried < cases; round++)
        {
            var random = new Random(seed + (round * 7919));
            var drafts = Drafts.Make(seed + round, Minutes);
            var card = new SimulatedCard();
            var done = 0;
            var isCutting = false;
            card.OnOperation = _ =>
            {
                if (isCutting || tried >= cases || random.Next(4) != 0)
                {
                    return;
                }

                isCutting = true;
                tried++;
                switch (Judge(card.AfterPowerCut(random), drafts, done))
                {
                    case Found.Lost:
                        lost++;
                        break;
                    case Found.Unreadable:
                        unreadable++;
                        break;
                    case Found.Wrong:
                        wrong++;
                        break;
                    case Found.FalseAlarm:
                        alarmed++;
                        break;
                }

                isCutting = false;
            };
            Drafts.Write(card, drafts, count => done = count);
        }

        return Verdict.None("acknowledged minutes lost", lost, tried, seed)
            | Verdict.None("records unreadable", unreadable, tried, seed)
            | Verdict.None("silently wrong", wrong, tried, seed)
                | Verdict.None("damage told where there was none", alarmed, tried, seed);
    }

    private static Found Judge(SimulatedCard card, IReadOnlyList<(MinuteDraft Draft, IReadOnlyList<Scan> Scans)> drafts,
        int done)
    {
        try
        {
            using var book = new RecordBook(card, Drafts.Limits);
            var back = Drafts.ReadAll(book);
            var expected = drafts.Take(done + 1).SelectMany(draft => draft.Scans).ToArray();
            if (back.Count < expected.Length - drafts[Math.Min(done, drafts.Count - 1)].Scans.Count
                && done < drafts.Count)
            {
                return Found.Lost;
            }

            var isExact = back.Count <= expected.Length
                && back.Zip(expected).All(pair => ScanCompare.Difference(pair.First, pair.Second).Length == 0);
            if (!isExact)
            {
                return Found.Wrong;
            }

            if (book.Damage.Count > 0)
            {
                Console.Error.WriteLine(book.Damage[0]);
                return Found.FalseAlarm;
            }

            if (done < drafts.Count)
            {
                book.Append(drafts[done].Draft);
            }

            return Found.Exact;
        }
        catch (Exception e) when (FileCheck.IsEngineTrouble(e))
        {
            Console.Error.WriteLine(e);
            return Found.Unreadable;
        }
    }

    private enum Found
    {
        Exact,
        Lost,
        Unreadable,
        Wrong,
        FalseAlarm,
    }
}
