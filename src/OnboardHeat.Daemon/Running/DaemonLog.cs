using Microsoft.Extensions.Logging;
using OnboardHeat.Engine.Options;
using Serilog;
using Serilog.Events;
using Serilog.Extensions.Logging;

namespace OnboardHeat.Daemon.Running;

/// <summary>
/// The log: to standard output, which systemd hands to the journal, and to a file where the owner wants one.
/// </summary>
internal sealed class DaemonLog : IDisposable
{
    private const int FilesKept = 14;
    private const long FileBytesMax = 10_000_000;

    private readonly Serilog.Core.Logger _logger;
    private readonly SerilogLoggerFactory _factory;

    public DaemonLog(LogOptions options)
    {
        // systemd sets this variable for what it reads itself; only there a line begins with its priority.
        var isJournal = Environment.GetEnvironmentVariable("JOURNAL_STREAM") is not null;
        var configuration = new LoggerConfiguration()
            .MinimumLevel.Information()
            .MinimumLevel.Override("Microsoft", LogEventLevel.Warning)
            .WriteTo.Console(new JournalLine(isJournal));
        if (options.File is { } file)
        {
            configuration = configuration.WriteTo.File(
                new JournalLine(isJournal: false), file, rollingInterval: RollingInterval.Day,
                retainedFileCountLimit: FilesKept,
                fileSizeLimitBytes: FileBytesMax, rollOnFileSizeLimit: true);
        }

        _logger = configuration.CreateLogger();
        _factory = new SerilogLoggerFactory(_logger);
    }

    /// <summary>What makes logs for parts that name theirs themselves.</summary>
    public ILoggerFactory Factory => _factory;

    /// <summary>The log under the name of a part of the daemon.</summary>
    public Microsoft.Extensions.Logging.ILogger For(string part) => _factory.CreateLogger(part);

    public void Dispose()
    {
        _factory.Dispose();
        _logger.Dispose();
    }
}
