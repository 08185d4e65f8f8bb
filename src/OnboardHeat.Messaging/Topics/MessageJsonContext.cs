using System.Text.Json.Serialization;
using OnboardHeat.Messaging.Actions;
using OnboardHeat.Messaging.Record;

namespace OnboardHeat.Messaging.Topics;

/// <summary>
/// Source-generated JSON of all payloads but the picture. A key that nobody knows makes a question malformed.
/// </summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow)]
[JsonSerializable(typeof(AlarmMessageForm))]
[JsonSerializable(typeof(ActionForm))]
[JsonSerializable(typeof(AnswerForm))]
[JsonSerializable(typeof(RecordForm))]
internal sealed partial class MessageJsonContext : JsonSerializerContext;
