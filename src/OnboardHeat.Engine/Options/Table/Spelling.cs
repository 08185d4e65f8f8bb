namespace OnboardHeat.Engine.Options.Table;

/// <summary>Finds what somebody may have meant.</summary>
internal static class Spelling
{
    /// <summary>More slips than this are another word (common practice, no source).</summary>
    private const int MaxSlips = 3;

    /// <summary>A half sentence with the nearest of the known names, or nothing.</summary>
    public static string Hint(string written, IEnumerable<string> known)
    {
        var nearest = known.Select(name => (name, slips: Slips(written, name)))
            .OrderBy(n => n.slips).FirstOrDefault((name: "", slips: int.MaxValue));
        return nearest.slips <= Math.Min(MaxSlips, written.Length / 2) ? $"; did you mean '{nearest.name}'?" : "";
    }

    /// <summary>
    /// Fewest letters to change, add or leave out; upper and lower case count as the same letter (Levenshtein 1966).
    /// </summary>
    private static int Slips(string a, string b)
    {
        var row = Enumerable.Range(0, b.Length + 1).ToArray();
        for (var i = 1; i <= a.Length; i++)
        {
            var diagonal = row[0];
            row[0] = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var change = char.ToLowerInvariant(a[i - 1]) == char.ToLowerInvariant(b[j - 1])
                    ? diagonal : diagonal + 1;
                diagonal = row[j];
                row[j] = Math.Min(change, Math.Min(row[j], row[j - 1]) + 1);
            }
        }

        return row[^1];
    }
}
