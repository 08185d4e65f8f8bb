namespace OnboardHeat.Limits.Daemons;

/// <summary>How one case ended.</summary>
/// <param name="RaisedAtS">
/// When a replay of the same readings raises the alarm, seconds of the play; null: never.
/// </param>
/// <param name="LateS">By how much the message came later than it was due, seconds; null: it never came.</param>
/// <param name="Words">All of it in a line.</param>
internal sealed record ChaosResult(double? RaisedAtS, double? LateS, string Words);
