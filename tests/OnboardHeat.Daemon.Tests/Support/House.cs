namespace OnboardHeat.Daemon.Tests.Support;

/// <summary>The source tree that these tests were built from.</summary>
internal static class House
{
    /// <summary>The folder of the solution.</summary>
    public static string Root { get; } = Find();

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
