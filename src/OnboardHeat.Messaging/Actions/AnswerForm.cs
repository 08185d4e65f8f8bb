using System.Text.Json.Serialization;
using OnboardHeat.Engine.Pictures;

namespace OnboardHeat.Messaging.Actions;

/// <summary>The answer on the asker's response topic.</summary>
internal sealed record AnswerForm
{
    public const string Taken = "taken";

    public const string Refused = "refused";

    [JsonPropertyName("v")]
    public int Version { get; init; } = PictureForm.CurrentVersion;

    /// <summary>The id that was asked with; empty when it could not be read.</summary>
    public required string Id { get; init; }

    /// <summary><c>taken</c>: it goes with the next scan. <c>refused</c>: nothing was done.</summary>
    public required string Result { get; init; }

    /// <summary>Why it was refused; empty when it was taken.</summary>
    public required string Why { get; init; }

    /// <summary>The moment now, so that a refused asker can ask again at once.</summary>
    public required string Moment { get; init; }
}
