namespace OnboardHeat.Daemon.Demo;

/// <summary>
/// The demo on a terminal: one calm page that is drawn over itself, on the terminal's other screen, so that nothing
/// scrolls away.
/// </summary>
internal sealed class TerminalView : IDemoView
{
    /// <summary>Least size that the page needs; smaller terminals get plain lines.</summary>
    public const int LeastWidth = 72, LeastHeight = 23;

    /// <summary>The page is no wider than reads well.</summary>
    private const int MostWidth = 92;

    private readonly TextWriter _to;
    private readonly DemoPage _page;
    private readonly string _notice;
    private readonly List<string> _lately = [];

    public TerminalView(TextWriter to, Ink ink, string notice)
    {
        _to = to;
        _notice = ink.Quiet(notice);
        _page = new DemoPage(ink);
        _to.Write("\x1b[?1049h\x1b[?25l\x1b[2J");
        _to.Flush();
    }

    public void Observe(in DemoMoment moment)
    {
        foreach (var change in moment.Picture.Changes)
        {
            var subject = change.Subject.Length == 0 ? "" : "/" + change.Subject;
            _lately.Add(
                $"{Words.Clock(moment.Time)} {(change.IsRaised ? "told" : "over")} {change.Definition.Name}{subject}");
        }
    }

    public void Show(in DemoMoment moment, double speed)
    {
        var sheet = new Sheet(Math.Min(MostWidth, Console.WindowWidth - 1), Console.WindowHeight);
        var pace = double.IsInfinity(speed) ? "as fast as it goes"
            : string.Create(System.Globalization.CultureInfo.InvariantCulture, $"×{speed:0}");
        _page.Lay(sheet, moment, pace, _lately);
        if (_notice.Length > 0 && sheet.Free > 0 && Sheet.Shown(_notice) < sheet.Width)
        {
            sheet.Add(" " + _notice);
        }

        _to.Write(sheet.Drawn());
        _to.Flush();
    }

    public void Dispose()
    {
        _to.Write("\x1b[?25h\x1b[?1049l");
        _to.Flush();
    }
}
