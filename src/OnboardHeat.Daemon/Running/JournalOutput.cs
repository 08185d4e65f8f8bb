using Microsoft.Extensions.Logging;
using OnboardHeat.Core;
using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Screening;
using OnboardHeat.Core.Watch;
using OnboardHeat.Engine;

namespace OnboardHeat.Daemon.Running;

/// <summary>
/// Writes to the journal what a person would want to find there: alarms that come and go, probes lost and back,
/// actions.
/// </summary>
internal sealed class JournalOutput(TurnQueue turns, FittedSet fitted, ILogger log)
{
    private readonly ReadingFault[] _faults = new ReadingFault[Channels.Count];
    private bool _hasBegun;

    /// <summary>Reads turns until the feed ends.</summary>
    public async Task RunAsync()
    {
        await foreach (var turn in turns.Reader.ReadAllAsync().ConfigureAwait(false))
        {
            Observe(turn);
        }
    }

    private void Observe(Turn turn)
    {
        if (!_hasBegun && turn.Picture.Works.IsFromBeforeRestart)
        {
            Log.WorksGoOn(log, turn.Picture.Works.AgeS / 60);
        }

        _hasBegun = true;
        foreach (var action in turn.Scan.Actions)
        {
            Log.Action(log, action.ToString());
        }

        foreach (var change in turn.Picture.Changes)
        {
            Tell(change);
        }

        foreach (var channel in Channels.All)
        {
            if (fitted.Has(channel))
            {
                Observe(channel, turn.Picture);
            }
        }
    }

    private void Observe(Channel channel, Picture picture)
    {
        var fault = picture[channel].Fault;
        var before = _faults[(int)channel];
        if (fault == before)
        {
            return;
        }

        _faults[(int)channel] = fault;
        if (fault == ReadingFault.None)
        {
            Log.ProbeBack(log, Channels.NameOf(channel));
        }
        else
        {
            Log.ProbeFault(log, Channels.NameOf(channel), fault.ToString());
        }
    }

    private void Tell(AlarmChange change)
    {
        var name = change.Subject.Length == 0 ? change.Definition.Name : $"{change.Definition.Name}/{change.Subject}";
        if (!change.IsRaised)
        {
            log.Log(LogLevel.Information, "{Alarm} cleared", name);
            return;
        }

        var level = change.Definition.Priority switch
        {
            AlarmPriority.Critical => LogLevel.Critical,
            AlarmPriority.Warning => LogLevel.Warning,
            _ => LogLevel.Information,
        };
        log.Log(level, "{Alarm} raised: {Because}", name, change.Because);
    }
}
