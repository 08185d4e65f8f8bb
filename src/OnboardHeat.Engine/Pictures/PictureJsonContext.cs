using System.Text.Json.Serialization;

namespace OnboardHeat.Engine.Pictures;

/// <summary>
/// Source-generated JSON of the public forms: no reflection, so that the ahead-of-time build writes them too.
/// </summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(PictureForm))]
[JsonSerializable(typeof(AlarmForm))]
internal sealed partial class PictureJsonContext : JsonSerializerContext;
