using System.CommandLine;

namespace OnboardHeat.Daemon.Commands;

/// <summary>
/// Where a command writes: standard output, or a file that takes its name only when it is whole, so that a broken one
/// is never taken for a good one.
/// </summary>
internal static class OutputFile
{
    private const string Unfinished = ".part";

    public static Option<string?> Option() => new("--output")
    {
        Description = "File to write; else standard output.",
        HelpName = "FILE",
    };

    /// <summary>
    /// Opens it, lets <paramref name="write"/> fill it, and keeps the file only when that gave exit 0.
    /// </summary>
    public static async Task<int> WriteAsync(string? file, Func<Stream, Task<int>> write)
    {
        try
        {
            if (file is null)
            {
                await using var output = new StandardOutput();
                return await write(output).ConfigureAwait(false);
            }

            return await WriteFileAsync(file, write).ConfigureAwait(false);
        }
        catch (OutputClosedException)
        {
            return ExitCode.Done;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            await Console.Error.WriteLineAsync($"{file ?? "standard output"} could not be written: {fault.Message}")
                .ConfigureAwait(false);
            return ExitCode.Failed;
        }
    }

    private static async Task<int> WriteFileAsync(string file, Func<Stream, Task<int>> write)
    {
        int code;
        await using (var stream = new FileStream(file + Unfinished, FileMode.Create, FileAccess.Write, FileShare.None))
        {
            code = await write(stream).ConfigureAwait(false);
            stream.Flush(flushToDisk: true);
        }

        if (code == ExitCode.Done)
        {
            File.Move(file + Unfinished, file, overwrite: true);
        }
        else
        {
            File.Delete(file + Unfinished);
        }

        return code;
    }
}
