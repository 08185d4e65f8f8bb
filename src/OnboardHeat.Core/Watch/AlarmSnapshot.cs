namespace OnboardHeat.Core.Watch;

/// <summary>One alarm that is not normal, as it stands after a scan.</summary>
/// <param name="Definition">Which alarm.</param>
/// <param name="Subject">The part, channel or watcher; empty where there can be one only.</param>
/// <param name="State">Where it stands.</param>
/// <param name="IsPresent">Whether its condition holds now, after the delays.</param>
/// <param name="SinceS">Elapsed seconds of the run at which it was raised (negative if before this run).</param>
/// <param name="Because">One sentence with its figures.</param>
/// <param name="WhatToDo">What to do, in the order a driver can.</param>
public sealed record AlarmSnapshot(
    AlarmDefinition Definition, string Subject, AlarmState State, bool IsPresent, double SinceS, string Because,
    IReadOnlyList<string> WhatToDo)
{
    /// <summary>
    /// Whether a person said that they saw it: then it does not sound, whatever its state. A latched alarm may be
    /// either.
    /// </summary>
    public bool IsAcknowledged { get; init; }

    /// <summary>Name and subject as topics spell them: <c>rating-near/heater-hose</c>.</summary>
    public string Path => Subject.Length == 0 ? Definition.Name : $"{Definition.Name}/{Subject}";
}
