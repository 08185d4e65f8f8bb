using System.Globalization;
using OnboardHeat.Core.Scans;
using OnboardHeat.Daemon.Running;

namespace OnboardHeat.Daemon.Control;

/// <summary>
/// Takes what a pair check found: the target is the place, the text the kelvin and what it was compared with.
/// </summary>
internal sealed class OffsetAnswer(DaemonBus bus) : IControlAnswer
{
    /// <summary>Its name on the socket.</summary>
    public const string Command = "offset";

    /// <inheritdoc/>
    public Task<ControlReply?> AnswerAsync(ControlRequest request, CancellationToken cancellationToken) =>
        Task.FromResult(request.Command == Command ? Take(request) : null);

    private ControlReply Take(ControlRequest request)
    {
        var words = request.Text.Split(' ');
        if (words.Length != 2 || !Channels.TryParse(words[1], out _)
            || !double.TryParse(words[0], NumberStyles.Float, CultureInfo.InvariantCulture, out var kelvin))
        {
            return ControlReply.Refused("an offset is kelvin and the place that was compared with");
        }

        return bus.Learn(request.Target, kelvin, words[1]) is { } problem
            ? ControlReply.Refused(problem)
            : ControlReply.Done("kept");
    }
}
