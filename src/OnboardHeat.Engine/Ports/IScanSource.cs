using OnboardHeat.Core.Scans;

namespace OnboardHeat.Engine.Ports;

/// <summary>
/// Where scans come from: the van's own wires, a simulated van. Whoever fills a scan names faults and never throws for
/// them.
/// </summary>
public interface IScanSource
{
    /// <summary>
    /// Fills the readings and signals of a cleared scan; run, time and actions are the loop's. Ends within the source's
    /// own timeouts, and never touches the scan after it has ended.
    /// </summary>
    Task ReadAsync(Scan scan, CancellationToken cancellationToken);
}
