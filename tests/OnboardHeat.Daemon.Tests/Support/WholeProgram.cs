using System.Diagnostics;

namespace OnboardHeat.Daemon.Tests.Support;

/// <summary>
/// The whole program as a process of its own, started from <c>/</c> as the service manager does.
/// <c>ONBOARDHEAT_PROGRAM</c> names another build of it, such as the ahead-of-time compiled one.
/// </summary>
internal static class WholeProgram
{
    /// <summary>Far above what any call in these tests takes.</summary>
    private static readonly TimeSpan s_patience = TimeSpan.FromMinutes(2);

    public static Task<Outcome> RunAsync(
        IEnumerable<string> arguments, params (string Name, string Value)[] environment) =>
        RunAsync("", arguments, environment);

    /// <summary>Runs the program with a text on its input.</summary>
    public static async Task<Outcome> RunAsync(
        string input, IEnumerable<string> arguments, params (string Name, string Value)[] environment)
    {
        using var process = Start(arguments, environment);
        await process.StandardInput.WriteAsync(input);
        process.StandardInput.Close();
        var output = process.StandardOutput.ReadToEndAsync();
        var errors = process.StandardError.ReadToEndAsync();
        await EndAsync(process);
        return new Outcome(process.ExitCode, await output, await errors);
    }

    /// <summary>
    /// Starts the program, reads one line of its output and closes the pipe, as <c>| head -1</c> does.
    /// </summary>
    public static async Task<Outcome> RunForOneLineAsync(IEnumerable<string> arguments)
    {
        using var process = Start(arguments, []);
        process.StandardInput.Close();
        var errors = process.StandardError.ReadToEndAsync();
        var line = await process.StandardOutput.ReadLineAsync();
        process.StandardOutput.Close();
        await EndAsync(process);
        return new Outcome(process.ExitCode, line ?? "", await errors);
    }

    /// <summary>Starts the program, reads one line of its output and interrupts it, as Ctrl-C does.</summary>
    public static async Task<Outcome> RunUntilInterruptedAsync(IEnumerable<string> arguments)
    {
        using var process = Start(arguments, []);
        process.StandardInput.Close();
        var errors = process.StandardError.ReadToEndAsync();
        var line = await process.StandardOutput.ReadLineAsync();
        using (var interrupt = Process.Start(
            "kill", ["-INT", process.Id.ToString(System.Globalization.CultureInfo.InvariantCulture)]))
        {
            await interrupt.WaitForExitAsync();
        }

        var rest = await process.StandardOutput.ReadToEndAsync();
        await EndAsync(process);
        return new Outcome(process.ExitCode, line + "\n" + rest, await errors);
    }

    private static Process Start(IEnumerable<string> arguments, (string Name, string Value)[] environment)
    {
        var program = Environment.GetEnvironmentVariable("ONBOARDHEAT_PROGRAM");
        var start = new ProcessStartInfo(program ?? "dotnet")
        {
            WorkingDirectory = "/",
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        if (program is null)
        {
            start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "OnboardHeat.Daemon.dll"));
        }

        foreach (var argument in arguments)
        {
            start.ArgumentList.Add(argument);
        }

        foreach (var (name, value) in environment)
        {
            start.Environment[name] = value;
        }

        return Process.Start(start)!;
    }

    private static async Task EndAsync(Process process)
    {
        using var patience = new CancellationTokenSource(s_patience, TimeProvider.System);
        try
        {
            await process.WaitForExitAsync(patience.Token);
        }
        catch (OperationCanceledException)
        {
            process.Kill(entireProcessTree: true);
            throw new TimeoutException("The program did not end.");
        }
    }
}
