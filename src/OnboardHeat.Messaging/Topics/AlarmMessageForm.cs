using System.Text.Json.Serialization;
using OnboardHeat.Engine.Pictures;

namespace OnboardHeat.Messaging.Topics;

/// <summary>An alarm on its own topic: the form that the picture holds, with what places it in time.</summary>
internal sealed record AlarmMessageForm : AlarmForm
{
    [JsonPropertyName("v"), JsonPropertyOrder(-3)]
    public int Version { get; init; } = PictureForm.CurrentVersion;

    /// <summary>Number of the run in which it was said.</summary>
    [JsonPropertyOrder(-2)]
    public required int Run { get; init; }

    /// <summary>Monotonic seconds of the run at which it was said.</summary>
    [JsonPropertyOrder(-2)]
    public required double ElapsedS { get; init; }

    /// <summary>Wall clock at which it was said; null where there is none.</summary>
    [JsonPropertyOrder(-1)]
    public required string? Time { get; init; }
}
