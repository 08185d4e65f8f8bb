using System.Text.Json.Serialization;

namespace OnboardHeat.Daemon.Control;

/// <summary>The JSON of the control socket, made at build time: the ahead-of-time build has no reflection.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, RespectNullableAnnotations = true, MaxDepth = 8)]
[JsonSerializable(typeof(ControlRequest))]
[JsonSerializable(typeof(ControlReply))]
internal sealed partial class ControlJson : JsonSerializerContext;
