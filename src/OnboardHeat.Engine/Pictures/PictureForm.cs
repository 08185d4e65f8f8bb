using System.Text.Json.Serialization;

namespace OnboardHeat.Engine.Pictures;

/// <summary>
/// The public form of a picture, the same on the broker and on the page. Stable: a key is never given a new meaning;
/// keys may be added without a new <see cref="Version"/>. Units stand in the keys, an unknown figure is null, names are
/// spelled as in recordings.
/// </summary>
public sealed record PictureForm
{
    /// <summary>Version of this form.</summary>
    public const int CurrentVersion = 1;

    /// <summary>Version of the form: 1.</summary>
    [JsonPropertyName("v")]
    public required int Version { get; init; }

    /// <summary>The van's id.</summary>
    public required string Van { get; init; }

    /// <summary>Number of the run: a start of the daemon.</summary>
    public required int Run { get; init; }

    /// <summary>Monotonic seconds since the run began.</summary>
    public required double ElapsedS { get; init; }

    /// <summary>Wall clock, ISO 8601 in UTC, whole seconds; a label, null where there is none.</summary>
    public required string? Time { get; init; }

    /// <summary>Whether the wall clock was known to be right.</summary>
    public required bool TimeTrusted { get; init; }

    /// <summary>The fitted channels by name.</summary>
    public required IReadOnlyDictionary<string, ChannelForm> Channels { get; init; }

    /// <summary>The fitted signals by name: true, false, or null where it could not be read.</summary>
    public required IReadOnlyDictionary<string, bool?> Signals { get; init; }

    /// <summary>The tank.</summary>
    public required TankForm Tank { get; init; }

    /// <summary>The coolant circuit.</summary>
    public required CircuitForm Circuit { get; init; }

    /// <summary>What a person can plan by.</summary>
    public required ForecastForm Forecast { get; init; }

    /// <summary>Alarms that are not normal, most urgent first.</summary>
    public required IReadOnlyList<AlarmForm> Alarms { get; init; }

    /// <summary>Whether works on the circuit are under way: its watchers are out of service.</summary>
    public required bool Works { get; init; }

    /// <summary>
    /// Works and bleeding in sentences, or the question what was changed; empty when there is nothing to say.
    /// </summary>
    public required IReadOnlyList<string> WorksWords { get; init; }
}
