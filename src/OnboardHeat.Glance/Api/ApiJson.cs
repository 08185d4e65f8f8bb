using System.Text.Json;
using System.Text.Json.Serialization;

namespace OnboardHeat.Glance.Api;

[JsonSourceGenerationOptions(JsonSerializerDefaults.Web)]
[JsonSerializable(typeof(ActionRequest))]
[JsonSerializable(typeof(PairRequest))]
[JsonSerializable(typeof(PairAnswer))]
[JsonSerializable(typeof(SessionAnswer))]
[JsonSerializable(typeof(Message))]
[JsonSerializable(typeof(ChartAnswer))]
[JsonSerializable(typeof(EventsAnswer))]
[JsonSerializable(typeof(RunsAnswer))]
[JsonSerializable(typeof(JourneysAnswer))]
[JsonSerializable(typeof(CompareAnswer))]
[JsonSerializable(typeof(InsulationReply))]
internal sealed partial class ApiJson : JsonSerializerContext;
