using System.Text.Json.Serialization;

namespace OnboardHeat.Glance.Guard;

[JsonSerializable(typeof(Phone[]))]
internal sealed partial class GuardJson : JsonSerializerContext;
