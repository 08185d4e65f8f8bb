using System.Globalization;

namespace OnboardHeat.Suites;

/// <summary>What was asked for on the command line.</summary>
/// <param name="Suite">Which suite.</param>
/// <param name="Amount">Driving hours, or nights.</param>
/// <param name="Seed">First seed.</param>
/// <param name="Kits">Kits by name.</param>
/// <param name="IsKnown">Whether each van is known from three drives and two nights before.</param>
/// <param name="IsLoud">Whether every miss and false alarm is listed.</param>
internal sealed record Request(
    string Suite, double Amount, int Seed, IReadOnlyList<Kit> Kits, bool IsKnown, bool IsLoud)
{
    public const string Usage =
        "usage: loss|nights|stored|rating [--amount HOURS-OR-NIGHTS] [--seed N] [--kit NAME,NAME] [--known] [--ablate] "
            + "[--list]";

    /// <summary>Reads the command line; null when it is not understood.</summary>
    public static Request? Read(string[] args, double shortAmount, double longAmount, bool isShort)
    {
        var request = new Request(args[0], isShort ? shortAmount : longAmount, 1, Kit.All, false, false);
        for (var i = 1; i < args.Length; i++)
        {
            var value = i + 1 < args.Length ? args[i + 1] : "";
            switch (args[i])
            {
                case "--amount" when double.TryParse(value, CultureInfo.InvariantCulture, out var amount) && amount > 0:
                    request = request with { Amount = amount };
                    i++;
                    break;
                case "--seed" when int.TryParse(value, CultureInfo.InvariantCulture, out var seed):
                    request = request with { Seed = seed };
                    i++;
                    break;
                case "--kit" when Named(value) is { } kits:
                    request = request with { Kits = kits };
                    i++;
                    break;
                case "--known":
                    request = request with { IsKnown = true };
                    break;
                case "--ablate":
                    request = request with { Kits = [.. request.Kits.SelectMany(k => k.Without().Prepend(k))] };
                    break;
                case "--list":
                    request = request with { IsLoud = true };
                    break;
                default:
                    return null;
            }
        }

        return request;
    }

    private static List<Kit>? Named(string names)
    {
        List<Kit> kits = [];
        foreach (var name in names.Split(','))
        {
            if (Kit.All.FirstOrDefault(k => k.Name == name) is not { } kit)
            {
                return null;
            }

            kits.Add(kit);
        }

        return kits;
    }
}
