using OnboardHeat.Engine.Ports;
using OnboardHeat.History.Blocks;

namespace OnboardHeat.History.Files;

/// <summary>
/// Dates a run's moments. Where its clock was ever trusted, that dates the whole run, what lies before backwards; else
/// what the clock claimed at the time is all there is, and it is told as such.
/// </summary>
internal sealed class RunDates
{
    private readonly TimeAnchor[] _anchors;
    private readonly bool _isTrusted;

    public RunDates(int run, IReadOnlyCollection<TimeAnchor> anchors)
    {
        Run = run;
        _isTrusted = anchors.Any(anchor => anchor.Quality == AnchorQuality.Trusted);
        IsTrustedThroughout = _isTrusted && anchors.All(anchor => anchor.Quality == AnchorQuality.Trusted);
        _anchors = [.. anchors.Where(anchor => !_isTrusted || anchor.Quality == AnchorQuality.Trusted)
            .OrderBy(anchor => anchor.Elapsed)];
    }

    public int Run { get; }

    public RunDating Dating => IsTrustedThroughout ? RunDating.Trusted : _isTrusted ? RunDating.DatedAfterwards
        : RunDating.Undated;

    private bool IsTrustedThroughout { get; }

    /// <summary>The date of a moment; null where the run has no wall clock at all.</summary>
    public DateTimeOffset? At(TimeSpan elapsed)
    {
        if (_anchors.Length == 0)
        {
            return null;
        }

        var best = _anchors[0];
        foreach (var anchor in _anchors)
        {
            if (anchor.Elapsed > elapsed)
            {
                break;
            }

            best = anchor;
        }

        return best.DateAt(elapsed);
    }
}
