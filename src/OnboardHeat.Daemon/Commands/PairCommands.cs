using System.CommandLine;
using OnboardHeat.Daemon.Control;

namespace OnboardHeat.Daemon.Commands;

/// <summary>The command lines that make a phone known to the page, list the known ones and forget them.</summary>
internal static class PairCommands
{
    public static IEnumerable<Command> Create()
    {
        yield return Pair();
        yield return Unpair();
    }

    private static Command Pair()
    {
        var config = ConfigurationFile.Option();
        var command = new Command(
            "pair", "Prints a code that makes one phone known to the page: it may then acknowledge alarms.") { config };
        command.SetAction((parsed, _) => PairAsync(parsed.GetValue(config)!));
        return command;
    }

    private static Command Unpair()
    {
        var config = ConfigurationFile.Option();
        var phone = new Argument<string>("PHONE")
        {
            Description = $"Number of the phone, or {PairingAnswer.AllPhones}; left out: the known phones are listed.",
            Arity = ArgumentArity.ZeroOrOne,
        };
        var command = new Command("unpair", "Forgets a phone: it may no longer act.") { phone, config };
        command.SetAction((parsed, _) => AskDaemon.ActAsync(
            parsed.GetValue(config)!,
            parsed.GetValue(phone) is { Length: > 0 } id
                ? new ControlRequest("unpair", id) : new ControlRequest("phones")));
        return command;
    }

    private static async Task<int> PairAsync(string configurationFile)
    {
        var socket = AskDaemon.SocketOf(configurationFile);
        var reply = await ControlClient.AskAsync(socket, new ControlRequest("pair"), TimeProvider.System)
            .ConfigureAwait(false);
        if (reply is not { Ok: true, Lines.Count: > 2 })
        {
            await Console.Error.WriteLineAsync(
                reply?.Lines.Count > 0 ? reply.Lines[0] : $"no daemon answers at {socket}; no code was made")
                .ConfigureAwait(false);
            return reply is null ? ExitCode.NoDaemon : ExitCode.BadInput;
        }

        var (code, reach) = (reply.Lines[0], reply.Lines[1]);
        Console.Out.WriteLine($"Code {code[..4]} {code[4..]}: works once, for 5 minutes.");
        Console.Out.WriteLine($"On the phone open {string.Join(" or ", reply.Lines.Skip(2))} and enter it.");
        if (reach == "this machine")
        {
            Console.Out.WriteLine(
                "The page listens on this machine only; Glance:Listen opens it to the van's network.");
        }
        else if (!Console.IsOutputRedirected)
        {
            // What stands behind '#' stays in the phone: the code is in no request line and in no log.
            Console.Out.WriteLine("Or point its camera here:");
            Console.Out.Write(QrPicture.Of($"{reply.Lines[2]}#code={code}"));
        }

        return ExitCode.Done;
    }
}
