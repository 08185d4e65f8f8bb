using System.Net;
using System.Text.Json;
using OnboardHeat.Adapters.Tests.Glance;
using OnboardHeat.Core;
using OnboardHeat.Core.Scans;
using OnboardHeat.Engine.Recordings;

namespace OnboardHeat.Adapters.Tests.Review;

public sealed class ReviewInterfaceTests
{
    private const string Day = "from=2026-05-23T00:00:00Z&to=2026-05-25T00:00:00Z";

    [Theory]
    [InlineData($"/api/v1/journeys?{Day}", "journeys")]
    [InlineData($"/api/v1/events?{Day}", "events")]
    [InlineData("/api/v1/runs", "runs")]
    [InlineData("/api/v1/insulation", "insulation")]
    [InlineData("/api/v1/compare?a=1/0/20000&b=1/20000/40000", "overlay")]
    [InlineData($"/api/v1/chart?{Day}&columns=tank_top&points=100", "chart")]
    public async Task Answer_HasTheFormThatTheDescriptionGives(string path, string schema)
    {
        await using var page = await ServedPage.StartAsync(record: Record(), van: Van);
        var answer = JsonDocument.Parse(await page.Client.GetStringAsync(path)).RootElement;
        var schemas = JsonDocument.Parse(await page.Client.GetStringAsync("/api/v1/openapi.json")).RootElement
            .GetProperty("components").GetProperty("schemas");
        var seen = new HashSet<string>();
        Compare(answer, schemas.GetProperty(schema), schemas, schema, seen);
        Assert.NotEmpty(seen);
    }

    [Theory]
    [InlineData("/api/v1/journeys")]
    [InlineData("/api/v1/compare?a=1/0/20")]
    [InlineData("/api/v1/compare?a=x&b=y")]
    [InlineData("/api/v1/report")]
    [InlineData("/api/v1/download/readings.csv?from=yesterday&to=today")]
    public async Task BadQuestion_IsRefusedInWords(string path)
    {
        await using var page = await ServedPage.StartAsync(record: Record(), van: Van);
        using var answer = await page.Client.GetAsync(path);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains("message", await answer.Content.ReadAsStringAsync());
    }

    [Theory]
    [InlineData("/api/v1/download/passwords.csv")]
    [InlineData("/api/v1/insulation?at=2020-01-01T00:00:00Z")]
    [InlineData("/api/v1/compare?a=9/0/20&b=9/0/20")]
    [InlineData("/api/v1/report?from=2020-05-23T00:00:00Z&to=2020-05-25T00:00:00Z")]
    public async Task WhatIsNotThere_IsNotFound(string path)
    {
        await using var page = await ServedPage.StartAsync(record: Record(), van: Van);
        using var answer = await page.Client.GetAsync(path);
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }

    [Fact]
    public async Task WithoutARecord_EveryQuestionSaysSo()
    {
        await using var page = await ServedPage.StartAsync();
        foreach (var path in new[] { "journeys", "compare", "insulation", "report", "download/readings.csv" })
        {
            using var answer = await page.Client.GetAsync($"/api/v1/{path}");
            Assert.Equal(HttpStatusCode.ServiceUnavailable, answer.StatusCode);
        }
    }

    [Fact]
    public async Task EventsAsTable_AreHarmlessInASpreadsheet()
    {
        // OWASP, "CSV injection": cells that begin with = + - @ are taken for formulas; an apostrophe before makes them
        // text.
        await using var page = await ServedPage.StartAsync(record: Record(), van: Van);
        using var answer = await page.Client.GetAsync($"/api/v1/download/events.csv?{Day}");
        Assert.Equal("attachment; filename=\"events.csv\"",
            answer.Content.Headers.GetValues("Content-Disposition").Single());
        var lines = (await answer.Content.ReadAsStringAsync()).Split('\n');
        Assert.Equal("run,elapsed_s,time,kind,name,state,text", lines[0]);
        Assert.Contains("1,600,2026-05-23T06:10:00Z,action,note,,'=1+1", lines);
        Assert.Equal(4, lines.Length);
    }

    [Fact]
    public async Task ReadingsAsTable_AreARecordedDrive()
    {
        await using var page = await ServedPage.StartAsync(record: Record(), van: Van);
        await using var csv = await page.Client.GetStreamAsync($"/api/v1/download/readings.csv?{Day}");
        using var copy = new MemoryStream();
        await csv.CopyToAsync(copy);
        copy.Position = 0;
        using var reader = RecordingReader.Open("readings.csv", copy);
        var (count, scan) = (0, new Scan());
        while (reader.Read(scan))
        {
            Assert.True(scan[Channel.TankTop].HasValue);
            count++;
        }

        Assert.Equal(Record().Scans.Count, count);
    }

    [Fact]
    public async Task JourneysAsTable_HaveAColumnForEachHead()
    {
        await using var page = await ServedPage.StartAsync(record: Record(), van: Van);
        var lines = (await page.Client.GetStringAsync($"/api/v1/download/journeys.csv?{Day}")).TrimEnd('\n')
            .Split('\n');
        Assert.Equal(4, lines.Length);
        Assert.All(lines, line => Assert.Equal(lines[0].Split(',').Length, line.Split(',').Length));
        Assert.Contains(lines, line => line.StartsWith("1,heating,40000,43600,", StringComparison.Ordinal));

        // What stands since the drive is found in the scans.
        Assert.Contains(lines, line => line.StartsWith("1,standing,4", StringComparison.Ordinal)
            && line.Contains(",trusted,1,", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("note", "", "", false)]
    [InlineData("note", "", "a quiet lake", true)]
    [InlineData("changed", "insulation", "foam", true)]
    [InlineData("changed", "probe/tank_top", "", true)]
    [InlineData("changed", "paint", "", false)]
    [InlineData("changed", "probe/roof", "", false)]
    public async Task NotesAndChangeMarks_AreTakenFromAPairedPhoneWhereTheySaySomething(string action, string target,
        string text, bool isTaken)
    {
        await using var page = await ServedPage.StartAsync(record: Record(), van: Van);
        var phone = await page.PairAsync();
        var json = $$"""{"action":"{{action}}","target":"{{target}}","text":"{{text}}"}""";
        using var answer = await page.Client.SendAsync(page.Ask(HttpMethod.Post, "/api/v1/actions", json, phone));
        Assert.Equal(isTaken ? HttpStatusCode.Accepted : HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal(isTaken ? 1 : 0, page.Inbox.TakeAll().Count);
    }

    private static VanDescription Van { get; } = new()
    {
        Fitted = new FittedSet([Channel.TankTop, Channel.TankBottom, Channel.Surroundings, Channel.Flow],
            [Signal.EngineRunning]),
    };

    private static HandRecord Record()
    {
        var record = new HandRecord().Run(1, 0, 14);
        for (var s = 0; s < 50_000; s += 300)
        {
            record.Scan(1, s, 60 - (s / 5000.0), 15);
        }

        SomeJourney.On(record, SomeJourney.Night(1, 300, 9, 0.8));
        SomeJourney.On(record, SomeJourney.Drive(1, 40_000, 43_600));
        record.Event(1, 600, "action", "note", "", "=1+1").Event(1, 1200, "mark", "changed", "insulation", "foam");
        return record;
    }

    /// <summary>Every key of an answer stands in its schema, with a type that the schema allows.</summary>
    private static void Compare(JsonElement value, JsonElement schema, JsonElement schemas, string at,
        HashSet<string> seen)
    {
        if (schema.TryGetProperty("$ref", out var link))
        {
            Compare(value, schemas.GetProperty(link.GetString()!.Split('/')[^1]), schemas, at, seen);
            return;
        }

        var type = schema.GetProperty("type");
        var allowed = type.ValueKind == JsonValueKind.Array
            ? type.EnumerateArray().Select(t => t.GetString()!).ToArray() : [type.GetString()!];
        Assert.True(allowed.Contains(TypeOf(value))
            || (TypeOf(value) == "integer" && allowed.Contains("number")), $"{at}: {value}");
        if (schema.TryGetProperty("enum", out var names) && value.ValueKind == JsonValueKind.String)
        {
            Assert.Contains(value.GetString(), names.EnumerateArray().Select(name => name.GetString()));
        }

        if (value.ValueKind == JsonValueKind.Object)
        {
            foreach (var property in value.EnumerateObject())
            {
                Assert.True(schema.GetProperty("properties").TryGetProperty(property.Name, out var inner),
                    $"{at}.{property.Name} is not described");
                seen.Add(property.Name);
                Compare(property.Value, inner, schemas, $"{at}.{property.Name}", seen);
            }
        }
        else if (value.ValueKind == JsonValueKind.Array)
        {
            foreach (var item in value.EnumerateArray())
            {
                Compare(item, schema.GetProperty("items"), schemas, $"{at}[]", seen);
            }
        }
    }

    private static string TypeOf(JsonElement value) => value.ValueKind switch
    {
        JsonValueKind.Object => "object",
        JsonValueKind.Array => "array",
        JsonValueKind.String => "string",
        JsonValueKind.True or JsonValueKind.False => "boolean",
        JsonValueKind.Number => value.TryGetInt64(out _) ? "integer" : "number",
        _ => "null",
    };
}
