using OnboardHeat.Daemon.Running;

namespace OnboardHeat.Daemon.Control;

/// <summary>Everything that the control socket answers. A new command is added here.</summary>
internal sealed class ControlAnswers(RunningVan van)
{
    private readonly ActionAnswer _actions = new(van);
    private readonly WorksAnswer _works = new(van);

    public async Task<ControlReply> AnswerAsync(ControlRequest request, CancellationToken cancellationToken) =>
        await _actions.AnswerAsync(request, cancellationToken).ConfigureAwait(false)
        ?? await _works.AnswerAsync(request, cancellationToken).ConfigureAwait(false)
        ?? ControlReply.Refused($"this daemon knows no '{request.Command}'");
}
