using OnboardHeat.Engine.Ports;

namespace OnboardHeat.Engine.Judging;

/// <summary>What a scan is made of.</summary>
/// <param name="Source">Readings and signals.</param>
/// <param name="Inbox">What people did since the last scan.</param>
/// <param name="House">How the daemon itself fares.</param>
public sealed record LoopInputs(IScanSource Source, ActionInbox Inbox, HouseStatus House);
