using System.Globalization;
using OnboardHeat.Core.Scans;
using OnboardHeat.Daemon.Probing;
using OnboardHeat.Engine.Checking;
using OnboardHeat.Engine.FirstDrive;

namespace OnboardHeat.Daemon.Checking;

/// <summary>
/// The answer to <c>check</c> in lines: configuration, probes, signals, what can be judged, the first drive.
/// </summary>
internal sealed class CheckPage(CheckFacts facts)
{
    private readonly List<string> _lines = [];

    /// <summary>The lines.</summary>
    public IReadOnlyList<string> Write()
    {
        _lines.Add($"OnboardHeat {DaemonVersion.Text}, {facts.Who}");
        Configuration();
        Title("Probes");
        _lines.AddRange(ProbesPage.Lines(facts.Bus));
        Contacts();
        Judging();
        SelfTest();
        FirstDrive();
        return _lines;
    }

    private void Title(string title)
    {
        _lines.Add("");
        _lines.Add(title);
    }

    private void Configuration()
    {
        Title("Configuration in force");
        foreach (var option in facts.Configuration.Describe())
        {
            // Lists have sections of their own below, but for the parts.
            if (option.Value is { } value && !option.Path.Contains('[', StringComparison.Ordinal))
            {
                var where = facts.Configuration.Stated.GetValueOrDefault(option.Path, "default");
                _lines.Add($"  {option.Path,-28}  {$"{value} {option.Unit}".TrimEnd(),-34}  {where}");
            }
        }

        foreach (var part in facts.Van.Circuit.Parts)
        {
            var name = part.Name == part.Id ? "" : $" ({part.Name})";
            _lines.Add(string.Create(
                CultureInfo.InvariantCulture,
                $"  Circuit:Parts {part.Id}{name}: {part.MaxCelsius:0.#} degrees Celsius at most, "
                + $"judged by {Channels.NameOf(part.On)}"));
        }
    }

    private void Contacts()
    {
        Title("Signals");
        if (facts.Configuration.Options.Signals.Count == 0)
        {
            _lines.Add("  none is wired");
        }

        foreach (var option in facts.Configuration.Options.Signals)
        {
            var level = Signals.TryParse(option.Signal, out var signal) ? facts.Scan[signal] : null;
            var shown = level switch { true => "1", false => "0", null => "not to be read" };
            _lines.Add($"  {option.Signal,-15}  {shown,-14}  pin {option.Pin}{(option.ActiveLow ? ", low is 1" : "")}");
        }
    }

    private void Judging()
    {
        var can = new Capabilities(facts.Van, facts.Kept.State.Learnt);
        var blind = facts.Picture.Watching.Where(
            watcher => watcher.CanJudge == false).Select(watcher => watcher.Watcher).Distinct().ToList();
        Title("Judged with what is fitted");
        Wrap("  ", string.Join(", ", can.Judged.Except(blind)));
        if (blind.Count > 0)
        {
            Title("Fitted for, but the readings are not there or not believed");
            Wrap("  ", string.Join(", ", blind));
        }

        Title("Not judged with what is fitted");
        foreach (var lack in can.Lacks)
        {
            var needs = lack.Needs.Count > 0
                ? $"needs {string.Join(" or ", lack.Needs)}"
                : "this van has to be learnt first";
            Wrap("  ", $"{lack.Watcher}: {needs}");
        }

        if (can.Lacks.Count == 0)
        {
            _lines.Add("  nothing");
        }

        Title("What one more would add");
        foreach (var addition in can.Additions)
        {
            var gains = addition.Watchers.Count > 0 ? $"{string.Join(", ", addition.Watchers)}; " : "";
            Wrap("  ", $"{addition.Place}: {gains}{PlaceWords.GainOf(addition.Place)}");
        }

        if (can.Additions.Count == 0)
        {
            _lines.Add("  every place has its probe");
        }
    }

    private void SelfTest()
    {
        Title("Self-test");
        Wrap("  ", facts.SelfTest is { } line ? $"at start: {line}" : "at start: by a running daemon only");
        if (facts.Van.HasLampOrBuzzer)
        {
            _lines.Add(facts.Kept.State.Tested is { } tested
                ? $"  lamp and buzzer: tested, or first seen, "
                    + $"{tested.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}"
                : "  lamp and buzzer: no right clock was seen yet that could date a test");
        }
    }

    private void FirstDrive()
    {
        Title("First drive");
        foreach (var step in FirstDriveStep.All)
        {
            var isSeen = facts.Kept.FirstDrive.Contains(step.Name);
            var mark = isSeen ? "[x]" : "[ ]";
            var beside = isSeen ? ""
                : !step.CanBeSeen(facts.Van.Fitted) ? " (cannot be seen with what is fitted)"
                : facts.Doubts.TryGetValue(step.Name, out var doubt) ? $" (NO: {doubt})" : "";
            _lines.Add($"  {mark} {step.Words}{beside}");
        }
    }

    /// <summary>Text of any length on lines that a terminal shows whole.</summary>
    private void Wrap(string indent, string text)
    {
        const int width = 110;
        var line = indent;
        foreach (var word in text.Split(' '))
        {
            if (line.Length + word.Length > width && line.Trim().Length > 0)
            {
                _lines.Add(line.TrimEnd());
                line = indent + "    ";
            }

            line += word + " ";
        }

        _lines.Add(line.TrimEnd());
    }
}
