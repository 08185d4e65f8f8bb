using System.Text.Json.Serialization;
using OnboardHeat.Engine.Pictures;

namespace OnboardHeat.Messaging.Record;

/// <summary>
/// One entry of the record for a receiver that may have been away: an event, or the figures of a moment.
/// </summary>
internal sealed record RecordForm
{
    [JsonPropertyName("v")]
    public int Version { get; init; } = PictureForm.CurrentVersion;

    /// <summary>
    /// Running number over all runs. Each entry comes at least once and in order: drop numbers already had.
    /// </summary>
    public required long Number { get; init; }

    /// <summary><c>alarm</c>, <c>action</c>, <c>mark</c> or <c>figures</c>.</summary>
    public required string Kind { get; init; }

    public required int Run { get; init; }

    public required double ElapsedS { get; init; }

    /// <summary>Wall clock; null while the run is undated.</summary>
    public required string? Time { get; init; }

    /// <summary>Name of the alarm with its subject, or of the action; null for figures.</summary>
    public string? Name { get; init; }

    /// <summary><c>raised</c> or <c>cleared</c> for an alarm, else the action's target; null for figures.</summary>
    public string? State { get; init; }

    /// <summary>The sentence or the note; null for figures.</summary>
    public string? Text { get; init; }

    /// <summary>The figures by name, unit in the name, null where it was not known; null for an event.</summary>
    public IReadOnlyDictionary<string, double?>? Figures { get; init; }
}
