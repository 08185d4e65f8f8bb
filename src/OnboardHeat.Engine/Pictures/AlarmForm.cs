namespace OnboardHeat.Engine.Pictures;

/// <summary>One alarm as it stands.</summary>
public record AlarmForm
{
    /// <summary>Name of the alarm: <c>coolant-loss</c>.</summary>
    public required string Alarm { get; init; }

    /// <summary>The part, channel or watcher; empty where there can be one only.</summary>
    public required string Subject { get; init; }

    /// <summary>
    /// <c>normal</c>, <c>unacknowledged</c>, <c>acknowledged</c>, <c>returned-unacknowledged</c>, <c>latched</c>,
    /// <c>shelved</c> or <c>out-of-service</c>.
    /// </summary>
    public required string State { get; init; }

    /// <summary>Whether its condition holds now, after the delays.</summary>
    public required bool Present { get; init; }

    /// <summary>
    /// Whether a person has said that it was seen; what is not stays to be acknowledged, latched or over.
    /// </summary>
    public required bool Acknowledged { get; init; }

    /// <summary><c>critical</c>, <c>warning</c> or <c>advice</c>.</summary>
    public required string Priority { get; init; }

    /// <summary>Monotonic seconds of the run at which it was raised; negative if before this run.</summary>
    public required double SinceS { get; init; }

    /// <summary>One sentence with its figures.</summary>
    public required string Because { get; init; }

    /// <summary>What to do, in the order a driver can.</summary>
    public required IReadOnlyList<string> WhatToDo { get; init; }
}
