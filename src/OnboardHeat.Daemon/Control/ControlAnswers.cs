namespace OnboardHeat.Daemon.Control;

/// <summary>Everything that the control socket answers: the first that knows the question does.</summary>
internal sealed class ControlAnswers(params IReadOnlyList<IControlAnswer> all)
{
    public async Task<ControlReply> AnswerAsync(ControlRequest request, CancellationToken cancellationToken)
    {
        foreach (var one in all)
        {
            if (await one.AnswerAsync(request, cancellationToken).ConfigureAwait(false) is { } reply)
            {
                return reply;
            }
        }

        return ControlReply.Refused($"this daemon knows no '{request.Command}'");
    }
}
