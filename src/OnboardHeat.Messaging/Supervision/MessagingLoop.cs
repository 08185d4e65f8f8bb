using OnboardHeat.Core.Watch;
using OnboardHeat.Messaging.Link;

namespace OnboardHeat.Messaging.Supervision;

/// <summary>
/// The one supervised loop: connects, holds a session, and after each failure waits and tries again, for years. While
/// the broker is away nothing grows: the queue of turns drops its oldest, and what a receiver must not miss is in the
/// record.
/// </summary>
internal sealed class MessagingLoop(
    SessionParts parts, Func<CancellationToken, Task<IBrokerLink>> connect, Outage outage, Backoff backoff)
{
    /// <summary>Half of the ten seconds within which the message must be there once the broker is up again.</summary>
    private static readonly TimeSpan s_whileCritical = TimeSpan.FromSeconds(5);

    private readonly NewestTurn _newest = new(parts.Turns, parts.Time);

    /// <summary>Runs until asked to stop or the feed ends.</summary>
    public async Task RunAsync(CancellationToken stopping)
    {
        _ = parts.Forwarder?.BeginAsync(stopping);
        while (!stopping.IsCancellationRequested)
        {
            var (hasEnded, wait) = await TryAsync(stopping);
            if (hasEnded)
            {
                return;
            }

            if (wait > TimeSpan.Zero)
            {
                await RestAsync(wait, stopping);
            }
        }
    }

    /// <summary>
    /// Waits, and no longer than some seconds once a critical alarm stands that nobody there has heard of.
    /// </summary>
    private async Task RestAsync(TimeSpan wait, CancellationToken stopping)
    {
        var began = parts.Time.GetTimestamp();
        for (var waited = TimeSpan.Zero; waited < wait && !stopping.IsCancellationRequested;)
        {
            var step = wait - waited < s_whileCritical ? wait - waited : s_whileCritical;
            await Task.Delay(step, parts.Time, stopping).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            waited = parts.Time.GetElapsedTime(began);
            _newest.Take();
            if (_newest.Turn?.Picture.Alarms is [{ Definition.Priority: AlarmPriority.Critical }, ..])
            {
                return;
            }
        }
    }

    private async Task<(bool HasEnded, TimeSpan Wait)> TryAsync(CancellationToken stopping)
    {
        BrokerSession? session = null;
        try
        {
            await using var link = await connect(stopping);
            session = new BrokerSession(parts, link, _newest);
            return (await session.RunAsync(outage.Over, stopping), TimeSpan.Zero);
        }
        catch (BrokerException e)
        {
            outage.Failed(e.Message);
            return (false, backoff.Next(session?.HeldFor ?? TimeSpan.Zero));
        }
        catch (OperationCanceledException) when (stopping.IsCancellationRequested)
        {
            return (true, TimeSpan.Zero);
        }
    }
}
