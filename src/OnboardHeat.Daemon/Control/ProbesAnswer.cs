using OnboardHeat.Daemon.Probing;
using OnboardHeat.Daemon.Running;

namespace OnboardHeat.Daemon.Control;

/// <summary>Answers <c>probes</c>: one look at the bus.</summary>
internal sealed class ProbesAnswer(DaemonBus bus) : IControlAnswer
{
    /// <summary>Its name on the socket.</summary>
    public const string Command = "probes";

    /// <inheritdoc/>
    public async Task<ControlReply?> AnswerAsync(ControlRequest request, CancellationToken cancellationToken)
    {
        if (request.Command != Command)
        {
            return null;
        }

        var sight = await bus.LookAsync(cancellationToken).ConfigureAwait(false);
        return new ControlReply(true, [.. ProbesPage.Lines(sight)], sight);
    }
}
