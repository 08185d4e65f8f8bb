using System.Text;

namespace OnboardHeat.Engine.Recordings;

/// <summary>Foreign text made fit to stand in a one-line message.</summary>
internal static class Shown
{
    /// <summary>Longest piece of foreign text in a message.</summary>
    private const int MaxLength = 40;

    /// <summary>The text without control characters and cut to a readable length.</summary>
    public static string Briefly(ReadOnlySpan<char> text)
    {
        var shown = new StringBuilder();
        foreach (var c in text[..Math.Min(text.Length, MaxLength)])
        {
            shown.Append(char.IsControl(c) || char.IsSurrogate(c) ? '?' : c);
        }

        return text.Length > MaxLength ? shown.Append("...").ToString() : shown.ToString();
    }
}
