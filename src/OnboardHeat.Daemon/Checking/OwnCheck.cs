using OnboardHeat.Core;
using OnboardHeat.Core.Scans;
using OnboardHeat.Daemon.Probing;
using OnboardHeat.Daemon.Running;
using OnboardHeat.Engine.Judging;
using OnboardHeat.Engine.Options;
using OnboardHeat.Probes;

namespace OnboardHeat.Daemon.Checking;

/// <summary>
/// The check where no daemon runs: the command reads probes and contacts itself, a few scans long, and judges them
/// once.
/// </summary>
internal sealed class OwnCheck(Configuration configuration, string file, TimeProvider time)
{
    /// <summary>Scans, so that a reading can be believed; about a second apart.</summary>
    private const int Scans = 3;

    private static readonly TimeSpan s_between = TimeSpan.FromSeconds(1);

    /// <summary>Looks and tells.</summary>
    public async Task<IReadOnlyList<string>> WriteAsync(CancellationToken cancellationToken)
    {
        var options = configuration.Options;
        using var view = new OwnBusView(options, time);
        var kept = view.Read();
        var van = options.Describe(options.Fitted());
        using var wires = WiredVan.OfThisMachine(
            options.OneWire.Bus, Fittings.ProbesOf(
                options, kept.Probes), Fittings.ContactsOf(options), Board.Open, new LoopWake(), time);
        var monitor = new Monitor(van, kept.State, ForecastTiming.WhenAsked);
        var scan = new Scan();
        var began = time.GetTimestamp();
        var picture = monitor.Observe(scan);
        for (var i = 0; i < Scans; i++)
        {
            scan.Clear();
            scan.Elapsed = time.GetElapsedTime(began);
            await wires.ReadAsync(scan, cancellationToken).ConfigureAwait(false);
            picture = monitor.Observe(scan);
            await Task.Delay(s_between, time, cancellationToken).ConfigureAwait(false);
        }

        var facts = new CheckFacts
        {
            Who = $"no daemon answers at {options.Control.Socket}; {file} and the wires read by this command",
            Configuration = configuration,
            Van = van,
            Bus = await view.LookAsync(cancellationToken).ConfigureAwait(false),
            Scan = scan,
            Picture = picture,
            Kept = kept,
        };
        return new CheckPage(facts).Write();
    }
}
