using System.CommandLine;
using OnboardHeat.Engine.Imports;
using OnboardHeat.Engine.Recordings;

namespace OnboardHeat.Daemon.Commands;

/// <summary>The command line of <c>import</c>.</summary>
internal static class ImportCommand
{
    private const string What =
        "Turns files of a simple logger (CSV) into a recorded drive that 'replay' reads, and can learn the van from.";

    public static Command Create()
    {
        var files = new Argument<string[]>("FILE")
        {
            Description = "Files of a logger; several are merged by time.", Arity = ArgumentArity.OneOrMore,
        };
        var map = new Option<string[]>("--map")
        {
            Description =
                "What a column is, by name or number: 'Temp 1=tank_top', 'boiler.csv:2=flow'; with two columns"
                    + " tank_top will do.",
            HelpName = "COLUMN=CHANNEL",
        };
        var zone = Text("--zone", "ZONE", "Zone of times that have no offset: Europe/Zurich, UTC or +02:00.");
        var decimalMark = Text("--decimal", "MARK", "Decimal mark where the numbers do not tell: comma or point.");
        var separator =
            Text("--separator", "MARK", "Mark between columns where the lines do not tell; one character or tab.");
        var order = Text("--date-order", "ORDER", "Where dates with slashes or dashes do not tell: dmy or mdy.");
        var dryRun = new Option<bool>("--dry-run") { Description = "Say what was understood and write nothing." };
        var output = OutputFile.Option();
        var command = new Command("import", What) { files, map, zone, decimalMark, separator, order, dryRun, output };
        command.SetAction(async (parsed, _) =>
        {
            var wish = WishOf(
                parsed.GetValue(map) ?? [], parsed.GetValue(zone), parsed.GetValue(decimalMark),
                parsed.GetValue(separator),
                parsed.GetValue(order), out var problem);
            if (problem is not null)
            {
                await Console.Error.WriteLineAsync(problem).ConfigureAwait(false);
                return ExitCode.Usage;
            }

            return await ExecuteAsync(parsed.GetRequiredValue(files), wish, parsed.GetValue(dryRun),
                parsed.GetValue(output))
                .ConfigureAwait(false);
        });
        return command;
    }

    private static async Task<int> ExecuteAsync(string[] files, ImportWish wish, bool isDryRun, string? output)
    {
        try
        {
            var import =
                new RecordingImport([.. files.Select(file => (file, (Func<Stream>)(() => File.OpenRead(file))))], wish);
            var understood = import.Understand();
            if (isDryRun)
            {
                understood.ToList().ForEach(Console.WriteLine);
                return ExitCode.Done;
            }

            return await OutputFile.WriteAsync(output, async to =>
            {
                await using var text = new StreamWriter(to, bufferSize: 32_768, leaveOpen: true);
                import.Write(text);
                return ExitCode.Done;
            }).ConfigureAwait(false);
        }
        catch (Exception fault) when (fault is RecordingException or FileNotFoundException or DirectoryNotFoundException
            or UnauthorizedAccessException)
        {
            await Console.Error.WriteLineAsync(fault.Message).ConfigureAwait(false);
            return ExitCode.BadInput;
        }
    }

    private static ImportWish WishOf(
        string[] maps, string? zoneName, string? decimalMark, string? separator, string? order, out string? problem)
    {
        var mappings = new List<ImportMapping>();
        var wrong = maps.FirstOrDefault(text =>
        {
            var isMapping = ImportMapping.TryParse(text, out var mapping);
            mappings.Add(mapping);
            return !isMapping;
        });
        ImportZone? zone = null;
        problem = wrong is not null
            ? $"--map {wrong}: that is no channel or signal, and neither time, date nor elapsed_s"
            : zoneName is not null && !ImportZone.TryParse(zoneName, out zone)
                ? $"--zone {zoneName}: there is no such zone here"
            : decimalMark is not (null or "comma" or "point" or "," or ".") ? "--decimal takes comma or point"
            : separator is not (null or "tab" or { Length: 1 }) ? "--separator takes one character or tab"
            : order is not (null or "dmy" or "mdy") ? "--date-order takes dmy or mdy"
            : null;
        return new ImportWish
        {
            Mappings = mappings,
            Zone = zone,
            DecimalMark = decimalMark is null ? null : decimalMark is "comma" or "," ? ',' : '.',
            Separator = separator is null ? null : separator is "tab" ? '\t' : separator[0],
            IsMonthFirst = order is null ? null : order == "mdy",
        };
    }

    private static Option<string?> Text(string name, string value, string description) =>
        new(name) { Description = description, HelpName = value };
}
