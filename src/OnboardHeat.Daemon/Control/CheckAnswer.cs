using OnboardHeat.Daemon.Checking;
using OnboardHeat.Daemon.Running;
using OnboardHeat.Daemon.Trials;
using OnboardHeat.Engine.Keeping;
using OnboardHeat.Engine.Options;

namespace OnboardHeat.Daemon.Control;

/// <summary>
/// Answers <c>check</c> with the configuration that is in force, which may not be the one that the file now holds.
/// </summary>
internal sealed class CheckAnswer(
    RunningVan van, Configuration configuration, DaemonBus bus, StateSaver saver,
        FirstDriveWorker firstDrive,
    VanTrials trials) : IControlAnswer
{
    /// <summary>Its name on the socket.</summary>
    public const string Command = "check";

    /// <inheritdoc/>
    public async Task<ControlReply?> AnswerAsync(ControlRequest request, CancellationToken cancellationToken)
    {
        if (request.Command != Command)
        {
            return null;
        }

        var sight = await bus.LookAsync(cancellationToken).ConfigureAwait(false);
        var newest = van.Latest.Newest ?? await van.Latest.WaitForAsync(
            static _ => true, cancellationToken).ConfigureAwait(false);
        var facts = new CheckFacts
        {
            Who = $"the running daemon, run {newest.Scan.Run}, up for {newest.Scan.Elapsed:d\\.hh\\:mm\\:ss}",
            Configuration = configuration,
            Van = van.Description,
            Bus = sight,
            Scan = newest.Scan,
            Picture = newest.Picture,
            Kept = saver.Newest,
            SelfTest = trials.SelfTestLine,
            Doubts = firstDrive.Doubts,
        };
        return ControlReply.Done(new CheckPage(facts).Write());
    }
}
