using System.Collections;
using OnboardHeat.Engine.Options;

namespace OnboardHeat.Daemon;

/// <summary>The configuration of a command: read once, and every problem told once.</summary>
internal static class Configured
{
    /// <summary>
    /// Reads the file and this process's environment. Null when there are problems; they are on stderr then: exit 78.
    /// </summary>
    public static Configuration? Load(string? file, ConfigurationUse use)
    {
        var configuration = Configuration.Load(file, ThisEnvironment(), use);
        foreach (var problem in configuration.Problems)
        {
            Console.Error.WriteLine(problem);
        }

        return configuration.Problems.Count == 0 ? configuration : null;
    }

    /// <summary>
    /// Reads what can be read, for commands that set a van up: problems are on stderr, and the rest is taken all the
    /// same.
    /// </summary>
    public static Configuration LoadWhatCanBe(string? file)
    {
        var configuration = Configuration.Load(file, ThisEnvironment(), ConfigurationUse.Any);
        foreach (var problem in configuration.Problems)
        {
            Console.Error.WriteLine(problem);
        }

        return configuration;
    }

    private static readonly string[] s_factsOfTheVan = ["Tank:", "Shower:", "Circuit:"];

    /// <summary>
    /// The facts of the van that answers rest on, in a line: which are stated, which are the defaults.
    /// </summary>
    public static string Facts(Configuration configuration) => string.Join(", ", configuration.Describe()
        .Where(o => o.Value is not null && !o.Path.Contains('[')
            && s_factsOfTheVan.Any(s => o.Path.StartsWith(s, StringComparison.Ordinal)))
        .Select(o => $"{o.Path} {o.Value}{(configuration.Stated.ContainsKey(o.Path) ? "" : " (default)")}"));

    private static IEnumerable<KeyValuePair<string, string>> ThisEnvironment() =>
        from DictionaryEntry entry in Environment.GetEnvironmentVariables()
        select new KeyValuePair<string, string>((string)entry.Key, (string?)entry.Value ?? "");
}
