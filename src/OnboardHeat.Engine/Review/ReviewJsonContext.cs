using System.Text.Json;
using System.Text.Json.Serialization;

namespace OnboardHeat.Engine.Review;

[JsonSourceGenerationOptions(JsonSerializerDefaults.Web, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
[JsonSerializable(typeof(JourneyForm))]
internal sealed partial class ReviewJsonContext : JsonSerializerContext;
