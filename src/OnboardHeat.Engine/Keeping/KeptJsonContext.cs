using System.Text.Json.Serialization;

namespace OnboardHeat.Engine.Keeping;

/// <summary>The JSON of the small file, made at build time: the ahead-of-time build has no reflection.</summary>
[JsonSourceGenerationOptions(UseStringEnumConverter = true, RespectNullableAnnotations = true)]
[JsonSerializable(typeof(KeptFileContent))]
internal sealed partial class KeptJsonContext : JsonSerializerContext;
