using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Watch;
using OnboardHeat.Daemon.Running;
using OnboardHeat.Engine;
using OnboardHeat.Engine.Actions;
using OnboardHeat.Engine.Pictures;

namespace OnboardHeat.Daemon.Control;

/// <summary>
/// Takes an action from the control socket to the judging loop, and answers with what stands after it was judged.
/// </summary>
internal sealed class ActionAnswer(RunningVan van, Func<Task> saved) : IControlAnswer
{
    private static readonly TimeSpan s_savedWithin = TimeSpan.FromSeconds(3);

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

        var turn = await judged.ConfigureAwait(false);
        // 'Done' holds over a power cut; a disk that hangs keeps nobody waiting for long.
        await saved().WaitAsync(s_savedWithin, cancellationToken)
            .ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        return ControlReply.Done([.. Standing(turn), .. ActionGuidance.For(action.Kind)]);
    }

    private static IEnumerable<string> Standing(Turn turn)
    {
        yield return "done";
        foreach (var words in turn.Picture.Works.Words)
        {
            yield return words;
        }

        foreach (var alarm in turn.Picture.Alarms.Where(alarm => alarm.State != AlarmState.OutOfService))
        {
            yield return $"{alarm.Path}: {PublicNames.Of(alarm.State)}: {alarm.Because}";
        }
    }
}
