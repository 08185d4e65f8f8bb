using OnboardHeat.Adapters.Tests.History;
using OnboardHeat.Core;
using OnboardHeat.Engine.Keeping;
using OnboardHeat.History.Files;

namespace OnboardHeat.Limits;

/// <summary>
/// Damages the files of a record in every way a worn card does. What is read afterwards is exact, or the loss is told.
/// </summary>
internal static class Mutilations
{
    public static int Run(int seed, int cases)
    {
        int silent = 0, wrong = 0, failed = 0;
        for (var i = 0; i < cases; i++)
        {
            var random = new Random(seed + i);
            var drafts = Drafts.Make(seed + i, 40);
            var card = new SimulatedCard();
            Drafts.Write(card, drafts, _ => { });
            var how = Damage(card, random);
            var expected = drafts.SelectMany(draft => draft.Scans).ToDictionary(scan => (scan.Run, scan.Elapsed));
            try
            {
                using var book = new RecordBook(card, Drafts.Limits);
                foreach (var name in book.Shelf.Names.SkipLast(1))
                {
                    book.CheckOlder(name);
                }

                var back = Drafts.ReadAll(book);
                var isWrong = back.Any(scan => !expected.TryGetValue((scan.Run, scan.Elapsed), out var was)
                    || ScanCompare.Difference(scan, was).Length > 0);
                wrong += isWrong ? 1 : 0;
                var isSilent = back.Count < expected.Count && book.Damage.Count == 0;
                silent += isSilent ? 1 : 0;
                if (isWrong || isSilent)
                {
                    Console.Error.WriteLine(
                        $"seed {seed + i}, {how}: {back.Count} of {expected.Count} scans, told:"
                            + $" {string.Join("; ", book.Damage)}");
                }

                book.Append(Drafts.Make(seed, 1)[0].Draft with { Header = drafts[^1].Draft.Header with { Run = 99 } });
            }
            catch (Exception e) when (FileCheck.IsEngineTrouble(e))
            {
                failed++;
                Console.Error.WriteLine($"seed {seed + i}, {how}: {e}");
            }
        }

        return Learnt(seed, cases / 4) | Verdict.None("silent losses", silent, cases, seed)
            | Verdict.None("wrong values", wrong, cases, seed)
            | Verdict.None("recording that does not go on", failed, cases, seed);
    }

    /// <summary>
    /// The small file of what was learnt: what is read back is one of the two newest states, or the loss is told.
    /// </summary>
    private static int Learnt(int seed, int cases)
    {
        var folder = Directory.CreateTempSubdirectory("onboardheat-learnt-").FullName;
        int silent = 0, wrong = 0;
        for (var i = 0; i < cases; i++)
        {
            var random = new Random(seed + i);
            var path = Path.Combine(folder, "learnt.onboardheat");
            var file = new KeptFile(path, hasSecondCopy: true);
            for (var run = 1; run <= 2; run++)
            {
                file.Write(new KeptFileContent(run, KeptState.Fresh with { WorksAgeS = run * 1.25 }));
            }

            foreach (var copy in i % 3 == 0 ? (string[])[path, path + ".before"] : [path])
            {
                Mutilate(copy, random);
            }

            var told = new List<string>();
            var back = new KeptFile(path, hasSecondCopy: true).Read(told.Add);
            silent += back?.Run != 2 && told.Count == 0 ? 1 : 0;
            wrong += back is not null && (back.Run is not (1 or 2) || back.State.WorksAgeS != back.Run * 1.25) ? 1 : 0;
        }

        Directory.Delete(folder, recursive: true);
        return Verdict.None("silent losses of what was learnt", silent, cases, seed)
            | Verdict.None("wrong values of what was learnt", wrong, cases, seed);
    }

    private static void Mutilate(string path, Random random)
    {
        var bytes = File.ReadAllBytes(path);
        switch (random.Next(4))
        {
            case 0:
                bytes[random.Next(bytes.Length)] ^= (byte)(1 << random.Next(8));
                break;
            case 1:
                bytes.AsSpan(random.Next(bytes.Length)).Clear();
                break;
            case 2:
                bytes = bytes[..random.Next(bytes.Length)];
                break;
            default:
                bytes = [];
                break;
        }

        File.WriteAllBytes(path, bytes);
    }

    private static string Damage(SimulatedCard card, Random random)
    {
        var names = card.Names()
            .Where(name => name.EndsWith(".db", StringComparison.Ordinal) && card.LengthOf(name) > 0).Order().ToArray();
        var name = names[random.Next(names.Length)];
        var bytes = card[name];
        var how = random.Next(6);
        switch (how)
        {
            case 0:
                bytes[random.Next(bytes.Length)] ^= (byte)(1 << random.Next(8));
                break;
            case 1:
                bytes.AsSpan(random.Next(bytes.Length / 8192) * 8192, 8192).Clear();
                break;
            case 2:
                bytes = bytes[..random.Next(bytes.Length)];
                break;
            case 3:
                bytes = [];
                break;
            case 4:
                random.NextBytes(bytes.AsSpan(random.Next(bytes.Length / 512) * 512, 512));
                break;
            default:
                foreach (var other in names)
                {
                    card[other] = card[other][..(card[other].Length / 2)];
                }

                return $"all files cut in half";
        }

        card[name] = bytes;
        return $"{name} damaged in way {how}";
    }
}
