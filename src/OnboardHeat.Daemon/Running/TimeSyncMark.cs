using OnboardHeat.Engine.Ports;

namespace OnboardHeat.Daemon.Running;

/// <summary>
/// The mark that systemd-timesyncd leaves under /run once the clock was set from outside in this boot. A file, because
/// the hardened unit forbids every call that has to do with setting the clock, adjtimex's asking included.
/// </summary>
internal sealed class TimeSyncMark(string path = TimeSyncMark.OfSystemd) : IUtcTrust
{
    /// <summary>Documented in systemd-timesyncd.service(8): touched whenever the clock is synchronised.</summary>
    public const string OfSystemd = "/run/systemd/timesync/synchronized";

    public bool IsTrusted => File.Exists(path);
}
