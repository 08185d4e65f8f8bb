namespace OnboardHeat.Glance.Api;

/// <summary>A short answer in words.</summary>
internal sealed record Message([property: System.Text.Json.Serialization.JsonPropertyName("message")] string Text);
