using System.CommandLine;
using OnboardHeat.Daemon.Commands;

namespace OnboardHeat.Daemon;

internal static class Program
{
    private static int Main(string[] args)
    {
        var root = new RootCommand("How much hot water is in the van, when it is ready, and what goes wrong with the coolant that heats it.")
        {
            ReplayCommand.Create(),
        };
        var parsed = root.Parse(args);
        if (parsed.Errors.Count > 0)
        {
            foreach (var error in parsed.Errors)
            {
                Console.Error.WriteLine(error.Message);
            }

            return ExitCode.Usage;
        }

        return parsed.Invoke();
    }
}
