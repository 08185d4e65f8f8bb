namespace OnboardHeat.Conventions.Tests.Support;

/// <summary>The source tree that these tests were built from.</summary>
internal static class House
{
    private static readonly string[] s_foreignFolders = [
        "bin", "obj", "node_modules", ".git", "TestResults", "BenchmarkDotNet.Artifacts", "artifacts"];

    /// <summary>The folder of the solution.</summary>
    public static string Root { get; } = Find();

    private static readonly Lazy<IReadOnlyList<SourceFile>> s_files = new(() =>
        [.. AllFiles().Where(f => f.EndsWith(".cs", StringComparison.Ordinal)).Select(f => new SourceFile(Root, f))]);

    /// <summary>Every C# file under <c>src</c> and <c>tests</c>.</summary>
    public static IReadOnlyList<SourceFile> Files => s_files.Value;

    /// <summary>Every C# file that ships.</summary>
    public static IEnumerable<SourceFile> Source => Files.Where(f => f.IsOfSource);

    /// <summary>Every file that belongs to the tree, built and fetched ones left out.</summary>
    public static IEnumerable<string> AllFiles() => Under(new DirectoryInfo(Root));

    /// <summary>Fails with every offence, one a line.</summary>
    public static void AssertNone(IEnumerable<string> offences)
    {
        var all = offences.ToList();
        Assert.True(all.Count == 0, $"{all.Count} against the rule:\n{string.Join('\n', all)}");
    }

    private static IEnumerable<string> Under(DirectoryInfo folder) =>
        folder.EnumerateFiles().Where(f => !s_foreignFolders.Contains(f.Name)).Select(f => f.FullName)
        .Concat(folder.EnumerateDirectories().Where(d => !s_foreignFolders.Contains(d.Name)).SelectMany(Under));

    private static string Find()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "OnboardHeat.sln")))
        {
            folder = folder.Parent ?? throw new InvalidOperationException("These tests run inside the source tree.");
        }

        return folder.FullName;
    }
}
