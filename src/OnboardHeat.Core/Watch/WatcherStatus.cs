namespace OnboardHeat.Core.Watch;

/// <summary>Whether one watcher can do its work with what is fitted and with the readings it gets.</summary>
/// <param name="Watcher">The name of its first alarm.</param>
/// <param name="CanJudge">
/// True: it judges. False: it is fitted, and its readings are not to be believed. Null: the van lacks its probes.
/// </param>
public sealed record WatcherStatus(string Watcher, bool? CanJudge);
