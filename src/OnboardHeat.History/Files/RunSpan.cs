using OnboardHeat.History.Blocks;

namespace OnboardHeat.History.Files;

/// <summary>The part of one run that one file holds: from where to where, and its ties to the wall clock.</summary>
internal sealed class RunSpan
{
    /// <summary>A clock that steps more often than this in one run and month says nothing more.</summary>
    private const int MostAnchors = 1000;

    private readonly List<TimeAnchor> _anchors = [];

    private RunSpan(in BlockHeader header)
    {
        Run = header.Run;
        FirstNumber = header.FirstNumber;
        First = header.First;
        Add(header);
    }

    public int Run { get; }

    public long FirstNumber { get; }

    public long LastNumber { get; private set; }

    public TimeSpan First { get; }

    public TimeSpan Last { get; private set; }

    public IReadOnlyList<TimeAnchor> Anchors => _anchors;

    public static List<RunSpan> Of(IEnumerable<BlockHeader> blocks)
    {
        var spans = new List<RunSpan>();
        foreach (var block in blocks)
        {
            Add(spans, block);
        }

        return spans;
    }

    public static void Add(List<RunSpan> spans, in BlockHeader block)
    {
        if (spans.Count > 0 && spans[^1].Run == block.Run)
        {
            spans[^1].Add(block);
        }
        else
        {
            spans.Add(new RunSpan(block));
        }
    }

    private void Add(in BlockHeader header)
    {
        LastNumber = header.LastNumber;
        Last = header.Last;
        var anchor = header.Anchor;
        if (anchor.Quality == AnchorQuality.None || _anchors.Count >= MostAnchors)
        {
            return;
        }

        // A tie that says the same as the one before is not kept: a clock that runs true needs one.
        if (!_anchors.FindLast(a => a.Quality == anchor.Quality).SaysAlike(anchor))
        {
            _anchors.Add(anchor);
        }
    }
}
