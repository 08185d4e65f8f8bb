using OnboardHeat.Conventions.Tests.Support;

namespace OnboardHeat.Conventions.Tests;

/// <summary>What the tree holds, and what it does not.</summary>
public sealed class TreeTests
{
    private static readonly string[] s_texts =
    [
        ".cs", ".csproj", ".props", ".targets", ".sln", ".json", ".jsonl", ".csv", ".md", ".txt", ".yaml", ".yml",
        ".xml", ".sh", ".html", ".css",
        ".js", ".mjs", ".ts", ".svg", ".service", ".rules", ".conf", ".editorconfig", ".gitignore", ".gitattributes",
        ".dockerfile", ".webmanifest", "",
    ];

    /// <summary>
    /// Words that have no business here, put together so that this file is not one of its own offenders.
    /// </summary>
    private static readonly string[] s_words =
    [
        "tran" + "script", "seed " + "document", "/wo" + "rk/", "@au" + "thor", "Created " + "by",
        "registry." + "npmjs", "api." + "nuget.org",
    ];

    private static readonly Lazy<(string Path, string Text)[]> s_all = new(() =>
        [.. House.AllFiles().Select(f => (Path.GetRelativePath(House.Root, f), File.ReadAllText(f)))]);

    [Fact]
    public void Tree_HoldsTextsOnly() => House.AssertNone(
        from file in House.AllFiles()
        where !s_texts.Contains(Path.GetExtension(file)) || File.ReadAllBytes(file).AsSpan().Contains((byte)0)
        select Path.GetRelativePath(House.Root, file));

    [Fact]
    public void Tree_HasNoForeignWord() => House.AssertNone(
        from file in s_all.Value
        from word in s_words
        where file.Text.Contains(word, StringComparison.OrdinalIgnoreCase)
            || file.Path.Contains(word, StringComparison.OrdinalIgnoreCase)
        select $"{file.Path}: {word}");

    [Fact]
    public void Texts_EndWithOneLineEndAndHaveNoTabsInCode() => House.AssertNone(
        from file in s_all.Value
        where file.Path.EndsWith(".cs", StringComparison.Ordinal)
        where !file.Text.EndsWith('\n') || file.Text.EndsWith("\n\n", StringComparison.Ordinal)
            || file.Text.Contains('\r') || file.Text.Contains('\t')
        select file.Path);
}
