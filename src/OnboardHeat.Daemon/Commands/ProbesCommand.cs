using System.CommandLine;
using OnboardHeat.Core.Scans;
using OnboardHeat.Daemon.Probing;

namespace OnboardHeat.Daemon.Commands;

/// <summary>The command line of <c>probes</c>.</summary>
internal static class ProbesCommand
{
    public static Command Create()
    {
        var config = ConfigurationFile.Option();
        var warm = new Option<bool>("--warm")
        {
            Description = "Names the probe that is warmed in the hand, one after the other.",
        };
        var pair = new Option<string[]>("--pair")
        {
            Description = "Compares two probes held together, as in flow return; the second learns the difference.",
            HelpName = "CHANNEL CHANNEL",
            Arity = new ArgumentArity(2, 2),
            AllowMultipleArgumentsPerToken = true,
        };
        pair.Validators.Add(static result =>
        {
            var names = result.Tokens.Select(token => token.Value).ToList();
            if (names.Find(static name => !Channels.TryParse(name, out _)) is { } unknown)
            {
                result.AddError($"--pair takes two channels; there is no channel '{unknown}'.");
            }
            else if (names.Count == 2 && names[0] == names[1])
            {
                result.AddError("--pair takes two channels, not one twice.");
            }
        });
        var command = new Command(
            "probes", "Lists what hangs on the 1-Wire bus, with reading and role.") { warm, pair, config };
        command.Validators.Add(result =>
        {
            if (result.GetValue(warm) && result.GetResult(pair) is not null)
            {
                result.AddError("--warm and --pair are two things; one at a time.");
            }
        });
        command.SetAction((parsed, cancellation) =>
            ExecuteAsync(parsed.GetValue(config)!, parsed.GetValue(warm), parsed.GetValue(pair), cancellation));
        return command;
    }

    private static async Task<int> ExecuteAsync(
        string file, bool isWarm, string[]? pair, CancellationToken cancellation)
    {
        using var view = await OpenAsync(file).ConfigureAwait(false);
        if (view is null)
        {
            return ExitCode.BadConfiguration;
        }

        var session = new ProbingSession(view, TimeProvider.System, Console.Out);
        try
        {
            return isWarm ? await session.NameWarmedAsync(cancellation).ConfigureAwait(false)
                : pair is [var reference, var other] ? await session.CompareAsync(
                    reference, other, cancellation).ConfigureAwait(false)
                : await session.ListAsync(cancellation).ConfigureAwait(false);
        }
        catch (BusViewGoneException gone)
        {
            await Console.Error.WriteLineAsync(gone.Message).ConfigureAwait(false);
            return ExitCode.NoDaemon;
        }
    }

    /// <summary>
    /// Through the daemon where one answers. Without one the configuration is read for roles only: a van that has none
    /// yet, or one that is not in order, is just where this command is needed.
    /// </summary>
    private static async Task<IBusView?> OpenAsync(string file)
    {
        if (await DaemonBusView.TryOpenAsync(
            AskDaemon.SocketOf(file), TimeProvider.System).ConfigureAwait(false) is { } daemon)
        {
            return daemon;
        }

        if (!File.Exists(file) && file != ConfigurationFile.Usual)
        {
            await Console.Error.WriteLineAsync($"{file}: there is no such file").ConfigureAwait(false);
            return null;
        }

        return new OwnBusView(Configured.LoadWhatCanBe(File.Exists(file) ? file : null).Options, TimeProvider.System);
    }
}
