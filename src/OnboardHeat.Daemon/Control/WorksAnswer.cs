using OnboardHeat.Daemon.Running;

namespace OnboardHeat.Daemon.Control;

/// <summary>
/// Answers how works on the circuit stand: what the probes say of bleeding, and what is still to be answered.
/// </summary>
internal sealed class WorksAnswer(RunningVan van) : IControlAnswer
{
    /// <summary>Its name on the socket.</summary>
    public const string Command = "works";

    /// <inheritdoc/>
    public async Task<ControlReply?> AnswerAsync(ControlRequest request, CancellationToken cancellationToken)
    {
        if (request.Command != Command)
        {
            return null;
        }

        var newest = van.Latest.Newest
            ?? await van.Latest.WaitForAsync(static _ => true, cancellationToken).ConfigureAwait(false);
        var words = newest.Picture.Works.Words;
        return ControlReply.Done(words.Count > 0 ? words : ["No works are under way: the circuit is watched."]);
    }
}
