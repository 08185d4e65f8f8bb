using System.CommandLine;

namespace OnboardHeat.Daemon.Commands;

/// <summary>The option that says which van's configuration is meant.</summary>
internal static class ConfigurationFile
{
    /// <summary>Where the configuration stands unless said otherwise.</summary>
    public const string Usual = "/etc/onboardheat/onboardheat.json";

    public static Option<string> Option() => new("--config")
    {
        Description = $"The van's configuration; else {Usual}.",
        HelpName = "FILE",
        DefaultValueFactory = static _ => Usual,
    };
}
