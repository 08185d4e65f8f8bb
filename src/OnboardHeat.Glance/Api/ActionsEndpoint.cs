using Microsoft.AspNetCore.Http;
using OnboardHeat.Core.Scans;
using OnboardHeat.Engine.Actions;
using OnboardHeat.Engine.Ports;
using OnboardHeat.Glance.Guard;

namespace OnboardHeat.Glance.Api;

/// <summary>Takes what a paired phone does and puts it into the one inbox; the next scan carries it.</summary>
internal sealed class ActionsEndpoint(IActionInbox inbox, Gate gate, AuditLog audit)
{
    public async Task ServeAsync(HttpContext context)
    {
        if (await Body.ReadAsync(context, ApiJson.Default.ActionRequest) is not { } asked)
        {
            return;
        }

        var (target, text) = (asked.Target ?? "", asked.Text ?? "");
        if (!PersonAction.TryParse(asked.Action ?? "", out var action) || target.Length > 100
            || (asked.Action ?? "").Contains(':'))
        {
            await Body.SayAsync(context, StatusCodes.Status400BadRequest, "There is no such action.");
            return;
        }

        action = new PersonAction(action.Kind, target, text);
        if (ActionCheck.ProblemOf(action) is { } problem)
        {
            await Body.SayAsync(context, StatusCodes.Status400BadRequest, problem);
            return;
        }

        var isTaken = inbox.Offer(action);
        audit.Acted(gate.PhoneOf(context)?.Id ?? "", PersonAction.NameOf(action.Kind), target, isTaken);
        await Body.SayAsync(
            context,
            isTaken ? StatusCodes.Status202Accepted : StatusCodes.Status503ServiceUnavailable,
            isTaken ? "Taken with the next scan." : "Too many actions are waiting: try again.");
    }
}
