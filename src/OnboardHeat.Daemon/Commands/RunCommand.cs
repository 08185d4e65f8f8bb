using System.CommandLine;
using System.Runtime.InteropServices;
using OnboardHeat.Daemon.Running;
using OnboardHeat.Engine.Options;

namespace OnboardHeat.Daemon.Commands;

/// <summary>The command line of <c>run</c>.</summary>
internal static class RunCommand
{
    public static Command Create()
    {
        var config = ConfigurationFile.Option();
        var command = new Command(
            "run",
            "Watches the van: reads the probes, judges, records, publishes. For the service manager.") { config };
        command.SetAction(parsed => Execute(parsed.GetValue(config)!));
        return command;
    }

    private static int Execute(string file)
    {
        // From the first moment on a wish to stop is kept, whatever the daemon is doing then.
        using var stopping = new CancellationTokenSource();
        using var terminate = PosixSignalRegistration.Create(PosixSignal.SIGTERM, Stop);
        using var interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, Stop);
        void Stop(PosixSignalContext signal)
        {
            signal.Cancel = true;
            stopping.Cancel();
        }

        return Configured.Load(file, ConfigurationUse.Run) is { } configuration
            ? new DaemonRun(configuration, file, TimeProvider.System)
                .ExecuteAsync(stopping.Token).GetAwaiter().GetResult()
            : ExitCode.BadConfiguration;
    }
}
