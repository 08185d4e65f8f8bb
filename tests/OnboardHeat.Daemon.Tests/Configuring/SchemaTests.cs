using System.Globalization;
using System.Text.Json;
using Json.Schema;
using OnboardHeat.Daemon.Tests.Support;
using OnboardHeat.Engine.Options;

namespace OnboardHeat.Daemon.Tests.Configuring;

/// <summary>Table of keys, schema and example say the same.</summary>
public sealed class SchemaTests
{
    private static readonly JsonDocumentOptions s_withComments = new() { CommentHandling = JsonCommentHandling.Skip };

    private static string ExampleFile => Path.Combine(House.Root, "config", "onboardheat.json");

    private static string SchemaFile => Path.Combine(House.Root, "config", "onboardheat.schema.json");

    [Fact]
    public void Example_IsInOrderForRun()
    {
        var configuration = Configuration.Load(ExampleFile, [], ConfigurationUse.Run);

        Assert.Empty(configuration.Problems);
        Assert.Equal(6, configuration.Options.Probes.Count);
        Assert.True(configuration.Options.Describe(configuration.Options.Fitted()).Fitted.HasTankProbe);
    }

    [Fact]
    public void Example_ShowsEveryKey()
    {
        var text = File.ReadAllText(ExampleFile);

        Assert.All(Facts(), f => Assert.Contains($"\"{f.Path.Split(':')[^1]}\":", text, StringComparison.Ordinal));
    }

    [Fact]
    public void Example_FitsTheSchema()
    {
        using var example = JsonDocument.Parse(File.ReadAllText(ExampleFile), s_withComments);

        var results = JsonSchema.FromText(File.ReadAllText(SchemaFile)).Evaluate(
            example.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List });

        var faults = (results.Details ?? []).Where(d => d.Errors is not null)
            .Select(d => $"{d.InstanceLocation} {string.Join("; ", d.Errors!.Values)}");
        Assert.True(results.IsValid, string.Join('\n', faults));
    }

    [Fact]
    public void EveryKeyOfTheTable_StandsInTheSchemaWithTheSameTypeRangeAndDefault()
    {
        using var schema = JsonDocument.Parse(File.ReadAllText(SchemaFile));

        Assert.All(Facts(), fact =>
        {
            var found = Find(schema.RootElement, fact.Path);
            Assert.True(found is not null, $"{fact.Path} is not in the schema");
            Assert.Equal((fact.Path, fact.Type), (fact.Path, Text(found.Value, "type")));
            var (min, max) = fact.Type switch
            {
                "string" => ("minLength", "maxLength"),
                "array" => ("minItems", "maxItems"),
                _ => ("minimum", "maximum"),
            };
            Assert.Equal(
                (fact.Path, fact.Min, fact.Max), (fact.Path, Number(found.Value, min), Number(found.Value, max)));
            var isItem = fact.Path.Contains("[]", StringComparison.Ordinal);
            if (!isItem || !fact.IsRequired)
            {
                var value = isItem && fact.Value == "\"\"" ? null : fact.Value;
                Assert.Equal(
                    (fact.Path, value),
                    (fact.Path, found.Value.TryGetProperty("default", out var d) ? d.GetRawText() : null));
            }
        });
    }

    [Fact]
    public void EveryKeyOfTheSchema_StandsInTheTableAndIsDescribed()
    {
        using var schema = JsonDocument.Parse(File.ReadAllText(SchemaFile));
        var known = Facts().Select(f => f.Path).ToHashSet();
        var inSchema = new List<string>();
        Walk(schema.RootElement, "", inSchema);

        Assert.Equal(known.Order(StringComparer.Ordinal), inSchema.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void RequiredKeysOfItems_AreTheSameInTableAndSchema()
    {
        using var schema = JsonDocument.Parse(File.ReadAllText(SchemaFile));
        foreach (var list in Facts().Where(f => f.Type == "array"))
        {
            var required = Find(schema.RootElement, list.Path)!.Value.GetProperty("items")
                .GetProperty("required").EnumerateArray().Select(e => e.GetString()!);
            var inTable = Facts()
                .Where(f => f.IsRequired && f.Path.StartsWith(list.Path + "[]:", StringComparison.Ordinal))
                .Select(f => f.Path.Split(':')[^1]);
            Assert.Equal(inTable.Order(StringComparer.Ordinal), required.Order(StringComparer.Ordinal));
        }
    }

    private static IReadOnlyList<Engine.Options.Table.OptionFacts> Facts() =>
        Configuration.Read("", "{}"u8.ToArray(), [], ConfigurationUse.Any).Describe();

    private static JsonElement? Find(JsonElement schema, string path)
    {
        foreach (var step in path.Replace("[]", ":[]", StringComparison.Ordinal).Split(':'))
        {
            if (step == "[]")
            {
                schema = schema.GetProperty("items");
            }
            else if (!schema.GetProperty("properties").TryGetProperty(step, out schema))
            {
                return null;
            }
        }

        return schema;
    }

    private static void Walk(JsonElement schema, string path, List<string> into)
    {
        Assert.False(schema.GetProperty("additionalProperties").GetBoolean(), path + " lets unknown keys pass");
        foreach (var property in schema.GetProperty("properties").EnumerateObject().Where(p => p.Name != "$schema"))
        {
            var key = path + property.Name;
            into.Add(key);
            Assert.True(property.Value.TryGetProperty("description", out _), key + " is not described");
            if (Text(property.Value, "type") == "object")
            {
                Walk(property.Value, key + ":", into);
            }
            else if (Text(property.Value, "type") == "array")
            {
                Walk(property.Value.GetProperty("items"), key + "[]:", into);
            }
        }
    }

    private static string? Text(JsonElement schema, string name) =>
        schema.TryGetProperty(name, out var value) ? value.GetString() : null;

    private static double? Number(JsonElement schema, string name) =>
        schema.TryGetProperty(name, out var value)
            ? double.Parse(value.GetRawText(), CultureInfo.InvariantCulture) : null;
}
