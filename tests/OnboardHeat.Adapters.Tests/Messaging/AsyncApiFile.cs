using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Json.Schema;
using YamlDotNet.RepresentationModel;

namespace OnboardHeat.Adapters.Tests.Messaging;

/// <summary>
/// config/asyncapi.yaml as a reader of it takes it: which channel a topic belongs to, and what may come on it.
/// </summary>
internal sealed class AsyncApiFile
{
    private readonly JsonObject _root;

    public AsyncApiFile()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "config", "asyncapi.yaml")))
        {
            folder = folder.Parent
                ?? throw new InvalidOperationException("config/asyncapi.yaml is in no folder above the tests.");
        }

        using var reader = File.OpenText(Path.Combine(folder.FullName, "config", "asyncapi.yaml"));
        var yaml = new YamlStream();
        yaml.Load(reader);
        _root = (JsonObject)Json(yaml.Documents[0].RootNode)!;
    }

    public IEnumerable<string> SentChannels => Operations.Where(o => (string?)o["action"] == "send").Select(ChannelOf);

    private IEnumerable<JsonObject> Operations => ((JsonObject)_root["operations"]!).Select(o => (JsonObject)o.Value!);

    /// <summary>Names of all channels whose address fits the topic; exactly one is in order.</summary>
    public IReadOnlyList<string> ChannelsFor(string topic) =>
        [.. ((JsonObject)_root["channels"]!).Where(c => Fits((JsonObject)c.Value!, topic)).Select(c => c.Key)];

    /// <summary>Everything in which a received message differs from its description.</summary>
    public IEnumerable<string> Differences(string channel, Received received)
    {
        var message = Resolve(((JsonObject)_root["channels"]![channel]!["messages"]!).Single().Value!);
        var mqtt = Operations.Single(o => ChannelOf(o) == channel)["bindings"]!["mqtt"]!;
        var expiry = mqtt["messageExpiryInterval"]?.ToString() ?? "";
        (string What, string Said, string Seen)[] rows =
        [
            ("content type", message["contentType"]!.ToString(), received.ContentType),
            ("payload format", "1", received.PayloadFormat),
            ("expiry", expiry, received.Expiry),
            ("retain", mqtt["retain"]!.ToString(), received.Retain ? "true" : "false"),
            ("qos", mqtt["qos"]!.ToString(), $"{received.Qos}"),
        ];
        foreach (var (what, said, seen) in rows.Where(row => row.Said != row.Seen))
        {
            yield return $"{received.Topic}: {what} {seen}, described as {said}";
        }

        var schema = JsonSchema.FromText(Inlined(message["payload"]!).ToJsonString());
        var isJson = received.ContentType == "application/json";
        using var payload = System.Text.Json.JsonDocument.Parse(
            isJson ? received.Payload : JsonValue.Create(received.Payload).ToJsonString());
        if (!schema.Evaluate(payload.RootElement).IsValid)
        {
            yield return $"{received.Topic}: payload {received.Payload} does not fit its schema";
        }
    }

    private static string ChannelOf(JsonObject operation) =>
        operation["channel"]!["$ref"]!.ToString()["#/channels/".Length..];

    private bool Fits(JsonObject channel, string topic)
    {
        if (channel["address"] is not { } address)
        {
            return false;
        }

        var pattern = Regex.Replace(address.ToString(), "\\{(\\w+)\\}", place =>
            Resolve(channel["parameters"]![place.Groups[1].Value]!)["enum"] is JsonArray names
                ? $"({string.Join('|', names.Select(n => Regex.Escape(n!.ToString())))})"
                : "[a-z0-9_-]+");
        return Regex.IsMatch(topic, $"^{pattern}$");
    }

    private JsonObject Resolve(JsonNode node)
    {
        var found = (JsonObject)node;
        return found["$ref"] is { } reference
            ? (JsonObject)reference.ToString()[2..].Split('/').Aggregate((JsonNode)_root, (at, name) => at[name]!)
            : found;
    }

    private JsonNode Inlined(JsonNode node) => node switch
    {
        JsonObject o when o.ContainsKey("$ref") => Inlined(Resolve(o)),
        JsonObject o => new JsonObject(
            o.Select(p => KeyValuePair.Create(p.Key, p.Value is null ? null : (JsonNode?)Inlined(p.Value)))),
        JsonArray a => new JsonArray([.. a.Select(i => i is null ? null : Inlined(i))]),
        _ => node.DeepClone(),
    };

    // Plain scalars have the meaning of YAML 1.2's JSON schema; what stands in quotes is text.
    private static JsonNode? Json(YamlNode node) => node switch
    {
        YamlMappingNode map => new JsonObject(
            map.Children.Select(p => KeyValuePair.Create(((YamlScalarNode)p.Key).Value!, Json(p.Value)))),
        YamlSequenceNode list => new JsonArray([.. list.Children.Select(Json)]),
        YamlScalarNode { Style: YamlDotNet.Core.ScalarStyle.Plain } plain => Plain(plain.Value!),
        YamlScalarNode scalar => JsonValue.Create(scalar.Value),
        _ => throw new InvalidOperationException($"{node.NodeType} is not expected."),
    };

    private static JsonNode? Plain(string text) =>
        text == "null" ? null
        : text is "true" or "false" ? JsonValue.Create(text == "true")
        : long.TryParse(text, out var number) ? JsonValue.Create(number)
        : JsonValue.Create(text);
}
