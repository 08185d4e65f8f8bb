using OnboardHeat.Engine.Ports;

namespace OnboardHeat.Engine.Judging;

/// <summary>Where a turn of the loop goes; none of them is waited for.</summary>
/// <param name="Feed">Every output's queue of turns.</param>
/// <param name="Keeper">Takes what outlives a restart.</param>
/// <param name="Notifier">The service manager.</param>
public sealed record LoopOutputs(TurnFeed Feed, IStateKeeper Keeper, IServiceNotifier Notifier);
