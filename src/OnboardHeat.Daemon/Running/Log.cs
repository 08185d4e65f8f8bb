using Microsoft.Extensions.Logging;

namespace OnboardHeat.Daemon.Running;

/// <summary>What the daemon itself writes to the journal, one line each.</summary>
internal static partial class Log
{
    [LoggerMessage(
        Level = LogLevel.Warning,
        Message = "works on the circuit go on, begun {Minutes:0} min ago and not ended: the circuit is not watched")]
    public static partial void WorksGoOn(ILogger log, double minutes);

    [LoggerMessage(1, LogLevel.Information,
        "OnboardHeat {Version}, configuration {Configuration}, run {Run}; {Probes}; publishes to {Destination}")]
    public static partial void Started(
        ILogger log, string version, string configuration, int run, string probes, string destination);

    [LoggerMessage(
        2, LogLevel.Critical, "{Worker} ended and nobody asked it to; the daemon ends and is to be started anew")]
    public static partial void EndedUnasked(ILogger log, string worker, Exception? bug);

    [LoggerMessage(3, LogLevel.Warning, "{Worker} did not end within {Seconds} s; what it held may be lost")]
    public static partial void NotEnded(ILogger log, string worker, double seconds);

    [LoggerMessage(4, LogLevel.Error, "{Worker} failed while ending")]
    public static partial void FailedWhileEnding(ILogger log, string worker, Exception bug);

    [LoggerMessage(5, LogLevel.Information, "stopping")]
    public static partial void Stopping(ILogger log);

    [LoggerMessage(6, LogLevel.Information, "stopped")]
    public static partial void Stopped(ILogger log);

    [LoggerMessage(7, LogLevel.Warning, "{Note}")]
    public static partial void Noted(ILogger log, string note);

    [LoggerMessage(
        13, LogLevel.Critical, "another daemon already judges this van: it holds the lock in {Folder}; this one ends")]
    public static partial void HeldByAnother(ILogger log, string folder);

    [LoggerMessage(8, LogLevel.Warning, "what was learnt cannot be kept, alarms go on: {Why}")]
    public static partial void NotKept(ILogger log, string why);

    [LoggerMessage(9, LogLevel.Information, "what was learnt is kept again")]
    public static partial void KeptAgain(ILogger log);

    [LoggerMessage(11, LogLevel.Warning, "no probe at {Channel}: {Fault}")]
    public static partial void ProbeFault(ILogger log, string channel, string fault);

    [LoggerMessage(12, LogLevel.Information, "{Channel} reads again")]
    public static partial void ProbeBack(ILogger log, string channel);

    [LoggerMessage(14, LogLevel.Information, "{Action}")]
    public static partial void Action(ILogger log, string action);

    [LoggerMessage(15, LogLevel.Information, "first drive, {Seen} of {Steps} seen: {Which}")]
    public static partial void FirstDrive(ILogger log, int seen, int steps, string which);

    [LoggerMessage(20, LogLevel.Information, "control socket {Path}")]
    public static partial void ControlOpen(ILogger log, string path);

    [LoggerMessage(21, LogLevel.Warning, "no control socket at {Path}, alarms go on: {Why}")]
    public static partial void ControlClosed(ILogger log, string path, string why);

    [LoggerMessage(30, LogLevel.Information, "page at {Address}")]
    public static partial void PageOpen(ILogger log, Uri? address);

    [LoggerMessage(31, LogLevel.Warning, "no page at {Address}:{Port}, alarms go on: {Why}")]
    public static partial void NoPage(ILogger log, string address, int port, string why);
}
