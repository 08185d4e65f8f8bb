using Microsoft.Extensions.Logging;
using OnboardHeat.Core;
using OnboardHeat.Engine;
using OnboardHeat.Engine.Pictures;
using OnboardHeat.Engine.Ports;

namespace OnboardHeat.Glance;

/// <summary>What the page reads from and writes to.</summary>
/// <param name="Feed">Turns of the judging loop.</param>
/// <param name="Json">Puts a turn into its public form.</param>
/// <param name="Inbox">Takes what people do.</param>
/// <param name="Record">The record; null while there is none (demo).</param>
/// <param name="Time">Time.</param>
/// <param name="Logs">Logs.</param>
/// <param name="Van">The van; null while there is no record.</param>
public sealed record GlancePorts(
    TurnFeed Feed, PictureJson Json, IActionInbox Inbox, IRecordReader? Record, TimeProvider Time, ILoggerFactory Logs,
    VanDescription? Van = null);
