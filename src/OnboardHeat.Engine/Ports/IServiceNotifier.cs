namespace OnboardHeat.Engine.Ports;

/// <summary>What the service manager wants to hear.</summary>
public interface IServiceNotifier
{
    /// <summary>The first scan was judged: the service is up.</summary>
    void Ready();

    /// <summary>
    /// The judging loop turns and no due scan is long overdue. Silence makes the service manager start us anew.
    /// </summary>
    void FeedWatchdog();

    /// <summary>We were asked to stop and are flushing.</summary>
    void Stopping();
}
