using OnboardHeat.Core.Scans;
using OnboardHeat.Daemon.Running;
using OnboardHeat.Engine;
using OnboardHeat.Engine.Actions;
using OnboardHeat.Engine.Pictures;

namespace OnboardHeat.Daemon.Control;

/// <summary>
/// Takes an action from the control socket to the judging loop, and answers with what stands after it was judged.
/// </summary>
internal sealed class ActionAnswer(RunningVan van) : IControlAnswer
{
    /// <inheritdoc/>
    public async Task<ControlReply?> AnswerAsync(ControlRequest request, CancellationToken cancellationToken)
    {
        if (!PersonAction.TryParse(request.Command, out var named)
            || request.Command != PersonAction.NameOf(named.Kind))
        {
            return null;
        }

        var action = new PersonAction(named.Kind, request.Target, request.Text);
        var problem = ActionCheck.ProblemOf(action) ?? ActionCheck.IdleBecause(action, van.Latest.Newest?.Picture);
        if (problem is not null)
        {
            return ControlReply.Refused(problem);
        }

        var judged = van.Latest.WaitForAsync(turn => turn.Scan.Actions.Contains(action), cancellationToken);
        if (!van.Inbox.Offer(action))
        {
            return ControlReply.Refused("too many actions wait; try again in a moment");
        }

        return ControlReply.Done([.. Standing(await judged.ConfigureAwait(false)), .. ActionGuidance.For(action.Kind)]);
    }

    private static IEnumerable<string> Standing(Turn turn)
    {
        yield return "done";
        foreach (var words in turn.Picture.Works.Words)
        {
            yield return words;
        }

        foreach (var alarm in turn.Picture.Alarms)
        {
            yield return $"{alarm.Path}: {PublicNames.Of(alarm.State)}: {alarm.Because}";
        }
    }
}
