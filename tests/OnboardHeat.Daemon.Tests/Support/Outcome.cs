using System.Text.Json;

namespace OnboardHeat.Daemon.Tests.Support;

/// <summary>How a command ended and what it said.</summary>
/// <param name="ExitCode">Its exit code.</param>
/// <param name="Output">All of its output.</param>
/// <param name="Errors">All that it told on stderr.</param>
internal sealed record Outcome(int ExitCode, string Output, string Errors)
{
    /// <summary>The output's lines.</summary>
    public string[] Lines => Output.Split('\n', StringSplitOptions.RemoveEmptyEntries);

    /// <summary>What was told on stderr, line by line.</summary>
    public string[] ErrorLines => Errors.Split('\n', StringSplitOptions.RemoveEmptyEntries);

    /// <summary>The output's objects of one kind.</summary>
    public JsonElement[] Of(string kind) =>
        [.. Lines.Select(line => JsonDocument.Parse(line).RootElement)
            .Where(e => e.GetProperty("kind").GetString() == kind)];
}
