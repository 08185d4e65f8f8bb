using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using System.Runtime.InteropServices;
using System.Text;
using OnboardHeat.Daemon.Demo;

namespace OnboardHeat.Daemon.Commands;

/// <summary>The command line of <c>demo</c>.</summary>
internal static class DemoCommand
{
    /// <summary>The mountain day then takes about 75 seconds.</summary>
    private const double DefaultSpeed = 200;

    /// <summary>The port that MQTT listeners try by themselves (registered with IANA).</summary>
    private const int DefaultPort = 1883;

    /// <summary>The closing words are read as text: no wider than this.</summary>
    private const int ClosingWidth = 100;

    public static Command Create()
    {
        var speed = new Option<double>("--speed")
        {
            Description = $"How many times faster than life, or max. Default {DefaultSpeed:0}.",
            HelpName = "N|max",
            CustomParser = Speed,
            DefaultValueFactory = _ => DefaultSpeed,
        };
        var seed = new Option<int>("--seed") { Description = "Another day of the same kind. Default 1.", HelpName = "N",
            DefaultValueFactory = _ => 1 };
        var port = new Option<int>("--port")
        {
            Description = $"Port of the demo's broker on this machine. Default {DefaultPort}.",
            HelpName = "N",
            DefaultValueFactory = _ => DefaultPort,
        };
        port.Validators.Add(static result =>
        {
            if (!result.Errors.Any() && result.GetValueOrDefault<int>() is < 1 or > 65_535)
            {
                result.AddError("--port takes a number from 1 to 65535.");
            }
        });
        var command = new Command(
            "demo", "Drives a simulated van through a mountain day. Needs nothing: no probes, no configuration.")
        {
            speed, seed, port,
        };
        command.SetAction(async (parsed, _) =>
        {
            // The library's own handling of Ctrl-C is switched off (see Program); the demo has a terminal to give back
            // and a word to say.
            using var stopping = new CancellationTokenSource();
            using var interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, Stop);
            using var terminate = PosixSignalRegistration.Create(PosixSignal.SIGTERM, Stop);
            return await RunAsync(
                parsed.GetValue(speed), parsed.GetValue(seed), parsed.GetValue(port),
                stopping.Token).ConfigureAwait(false);

            void Stop(PosixSignalContext signal)
            {
                signal.Cancel = true;
                stopping.Cancel();
            }
        });
        return command;
    }

    private static async Task<int> RunAsync(double speed, int seed, int port, CancellationToken stopping)
    {
        using var output = new StandardOutput();
        using var writer = new StreamWriter(output, new UTF8Encoding(false), 65_536) { NewLine = "\n" };
        try
        {
            var van = DemoDay.Begin(seed);
            var pace = new DemoPace(speed);
            // At full speed the day is over before anybody could listen.
            await using var broadcast = pace.IsUnlimited ? null : new DemoBroadcast(port, TimeProvider.System);
            var run = new DemoRun(van, pace, broadcast, TimeProvider.System);
            bool isWhole;
            using (var view = ViewOn(writer, broadcast?.Notice ?? ""))
            {
                isWhole = await run.RunAsync(view, stopping).ConfigureAwait(false);
            }

            var width = Console.IsOutputRedirected
                ? ClosingWidth
                : Math.Clamp(Console.WindowWidth - 1, 40, ClosingWidth);
            await writer.WriteAsync(
                new DemoClosing(run.Record, run.Crew, van.Plan.Start, width).Write(isWhole)).ConfigureAwait(false);
            await writer.FlushAsync(CancellationToken.None).ConfigureAwait(false);
            return ExitCode.Done;
        }
        catch (OutputClosedException)
        {
            return ExitCode.Done;
        }
    }

    private static IDemoView ViewOn(TextWriter writer, string notice)
    {
        if (Console.IsOutputRedirected || Console.WindowWidth < TerminalView.LeastWidth
            || Console.WindowHeight < TerminalView.LeastHeight)
        {
            return new PlainLines(writer, notice);
        }

        return new TerminalView(
            writer, new Ink(string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR"))), notice);
    }

    private static double Speed(ArgumentResult result)
    {
        var text = result.Tokens is [var token] ? token.Value : "";
        if (text == "max")
        {
            return double.PositiveInfinity;
        }

        if (double.TryParse(
            text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture,
            out var speed) && speed is >= 1 and <= 100_000)
        {
            return speed;
        }

        result.AddError($"--speed takes a number from 1 to 100000 or 'max', not '{text}'.");
        return DefaultSpeed;
    }
}
