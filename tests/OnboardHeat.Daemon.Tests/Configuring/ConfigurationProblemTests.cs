using System.Text;
using OnboardHeat.Engine.Options;

namespace OnboardHeat.Daemon.Tests.Configuring;

/// <summary>A bad configuration is told whole, once, each problem with its place.</summary>
public sealed class ConfigurationProblemTests
{
    private const string File = "van.json";

    [Theory]
    [InlineData("{\"Tonk\":{}}", "van.json:1:2: Tonk: is no known key; did you mean 'Tank'?")]
    [InlineData("{\"Tank\":{\"Volume\":{\"Litres\":24}}}", "van.json:1:10: Tank:Volume: is no known key")]
    [InlineData(
        "{\"Circuit\":{\"Parts\":[{\"Id\":\"a\",\"On\":\"flow\",\"MaxCelsius\":70,\"Color\":\"red\"}]}}",
        "van.json:1:60: Circuit:Parts:0:Color: is no known key")]
    [InlineData("{\"tank\":{}}", "van.json:1:2: tank: is no known key; did you mean 'Tank'?")]
    [InlineData("{\"Van\":{\"$schema\":\"x\"}}", "van.json:1:9: Van:$schema: is no known key")]
    public void UnknownKeyAtAnyDepth_IsNamed(string json, string problem) =>
        Assert.Equal(problem, Assert.Single(Problems(json)));

    [Theory]
    [InlineData("{\"Tank\":{\"VolumeLitres\":\"24\"}}", "takes a number of litres, 1 to 500, not '24'")]
    [InlineData("{\"Tank\":{\"VolumeLitres\":[24]}}", "takes a number of litres, 1 to 500, not a list")]
    [InlineData("{\"Tank\":{\"VolumeLitres\":{}}}", "takes a number of litres, 1 to 500, not a section")]
    [InlineData("{\"Tank\":{\"VolumeLitres\":null}}", "has no value")]
    [InlineData("{\"Tank\":{\"VolumeLitres\":true}}", "takes a number of litres, 1 to 500, not true")]
    [InlineData("{\"Tank\":24}", "takes a section in braces, not 24")]
    [InlineData("{\"Tank\":[]}", "takes a section in braces, not a list")]
    [InlineData("{\"Probes\":{}}", "takes a list")]
    [InlineData("{\"Probes\":[1]}", "takes a section in braces, not 1")]
    [InlineData("{\"Glance\":{\"Port\":80.5}}", "takes a whole number, 1 to 65535, not 80.5")]
    [InlineData("{\"Glance\":{\"OpenReading\":\"yes\"}}", "takes true or false, not 'yes'")]
    [InlineData("{\"Van\":{\"Id\":7}}", "takes a short name of a-z, 0-9 and '-', not 7")]
    public void WrongType_IsNamed(string json, string what) =>
        Assert.Contains(what, Assert.Single(Problems(json)), StringComparison.Ordinal);

    [Theory]
    [InlineData("{\"Tank\":{\"VolumeLitres\":0}}")]
    [InlineData("{\"Tank\":{\"VolumeLitres\":501}}")]
    [InlineData("{\"Tank\":{\"VolumeLitres\":1e308}}")]
    [InlineData("{\"Tank\":{\"VolumeLitres\":1e400}}")]
    [InlineData("{\"Tank\":{\"VolumeLitres\":-24}}")]
    [InlineData("{\"Tank\":{\"ColdSupplyCelsius\":-1}}")]
    [InlineData("{\"OneWire\":{\"ScanSeconds\":31}}")]
    [InlineData("{\"Van\":{\"Id\":\"Our Van\"}}")]
    [InlineData("{\"Van\":{\"Id\":\"\"}}")]
    [InlineData("{\"Van\":{\"Id\":\"abcdefghijklmnopqrstuvwxyz0123456\"}}")]
    [InlineData("{\"Circuit\":{\"Parts\":[{\"Id\":\"a\",\"On\":\"bath\",\"MaxCelsius\":70}]}}")]
    [InlineData("{\"Probes\":[{\"Channel\":\"flow\",\"Rom\":\"28-00000000000\"}]}")]
    [InlineData("{\"Probes\":[{\"Channel\":\"flow\",\"Rom\":\"28-00000000000G\"}]}")]
    [InlineData("{\"History\":{\"Folder\":\"record\"}}")]
    [InlineData("{\"Messaging\":{\"Host\":\"two words\"}}")]
    [InlineData("{\"Glance\":{\"Listen\":\"localhost\"}}")]
    public void ValueOutsideItsRange_IsRefused(string json) => Assert.Single(Problems(json));

    [Theory]
    [InlineData(
        "{\"Tank\":{\"ReliefCelsius\":50},\"Shower\":{\"UsableTopCelsius\":50}}",
        "Tank:ReliefCelsius: is 50 and must lie 5 K above Shower:UsableTopCelsius, which is 50")]
    [InlineData(
        "{\"Tank\":{\"ReliefCelsius\":60},\"Shower\":{\"MixedCelsius\":58}}",
        "must lie 5 K above Shower:MixedCelsius, which is 58")]
    [InlineData("{\"OneWire\":{\"ScanSeconds\":20}}", "is shorter than OneWire:ScanSeconds")]
    [InlineData("{\"Messaging\":{\"Host\":\"broker\",\"EmbeddedBroker\":true}}", "does not go with Messaging:Host")]
    [InlineData("{\"Messaging\":{\"Host\":\"broker\",\"PasswordFile\":\"/etc/p\"}}", "needs Messaging:UserName")]
    [InlineData(
        "{\"Outputs\":{\"BuzzerPin\":17,\"LampPin\":17}}", "Outputs:LampPin: pin 17 is taken by Outputs:BuzzerPin")]
    [InlineData(
        "{\"Outputs\":{\"LampPin\":4},\"Signals\":[{\"Signal\":\"tray_wet\",\"Pin\":4}]}",
        "pin 4 is taken by Signals:0:Pin")]
    [InlineData(
        "{\"Signals\":[{\"Signal\":\"tray_wet\",\"Pin\":4},{\"Signal\":\"tray_wet\",\"Pin\":5}]}",
        "'tray_wet' stands already in Signals:0")]
    public void RelationThatDoesNotHold_NamesBothSides(string json, string what) =>
        Assert.Contains(what, Assert.Single(Problems(json)), StringComparison.Ordinal);

    [Theory]
    [InlineData("", "van.json:1:1: is no JSON")]
    [InlineData("{\n  \"Tank\": {\n    \"VolumeLitres\": NaN\n  }\n}", "van.json:3:21: is no JSON from here on: 'N'")]
    [InlineData("{\"Tank\":{}", "is no JSON from here on")]
    [InlineData("[]", "van.json: takes a section in braces, not a list")]
    [InlineData("{} {}", "van.json:1:4: is no JSON from here on")]
    [InlineData("{\"Van\":{\"Id\":\"\\ud800\"}}", "van.json:1:14: holds text that is no UTF-8")]
    public void TextThatIsNoJson_IsToldWithLineAndColumn(string json, string what) =>
        Assert.Contains(what, Assert.Single(Problems(json)), StringComparison.Ordinal);

    [Fact]
    public void ManyProblems_AreAllToldAtOnce()
    {
        const string json = """
            {
              "Tank": { "VolumeLitres": "24", "Colour": "red" },
              "Tank": { },
              "Circuit": { "Parts": [
                { "Id": "hose", "On": "return", "MaxCelsius": 70 },
                { "Id": "hose", "On": "flow" }
              ] },
              "Probes": [ { "Channel": "flow", "Rom": "28-000000000001" }, { "Channel": "flow", "Rom": "28-000000000001" } ],
              "Glance": { "Port": 70000 }
            }
            """;

        Assert.Equal(
            [
                "van.json:2:13: Tank:VolumeLitres: takes a number of litres, 1 to 500, not '24'",
                "van.json:2:35: Tank:Colour: is no known key",
                "van.json:3:3: Tank: is stated twice",
                "van.json:6:5: Circuit:Parts:1: lacks 'MaxCelsius'",
                "van.json:9:15: Glance:Port: takes a whole number, 1 to 65535, not 70000",
                "van.json:6:7: Circuit:Parts:1:Id: 'hose' stands already in Circuit:Parts:0",
                "van.json:8:66: Probes:1:Channel: 'flow' stands already in Probes:0",
                "van.json:8:85: Probes:1:Rom: '28-000000000001' stands already in Probes:0",
            ],
            Problems(json));
    }

    [Fact]
    public void CommentsSchemaTrailingCommaAndByteOrderMark_AreTaken()
    {
        var configuration = Read(
            "\uFEFF{ // our van\n \"$schema\": \"./x.json\", /* tank */ \"Tank\": { \"VolumeLitres\": 30, }, }");

        Assert.Empty(configuration.Problems);
        Assert.Equal(30, configuration.Options.Tank.VolumeLitres);
    }

    [Fact]
    public void Environment_OverridesScalarsOverTheFile()
    {
        var configuration = Read(
            "{\"Tank\":{\"VolumeLitres\":30}}",
            [("ONBOARDHEAT__Tank__VolumeLitres", "18.5"), ("ONBOARDHEAT__Messaging__Tls", "true")]);

        Assert.Empty(configuration.Problems);
        Assert.Equal((18.5, true), (configuration.Options.Tank.VolumeLitres, configuration.Options.Messaging.Tls));
        Assert.Equal("ONBOARDHEAT__Tank__VolumeLitres", configuration.Stated["Tank:VolumeLitres"]);
    }

    [Theory]
    [InlineData(
        "ONBOARDHEAT__Probes__0__Rom", "28-000000000001",
        "Probes:0:Rom: is a list or in one; the environment sets single values only")]
    [InlineData("ONBOARDHEAT__Tank", "24", "Tank: is a section; the environment sets single values only")]
    [InlineData("ONBOARDHEAT__Tank__Volume", "24", "Tank:Volume: is no known key")]
    [InlineData(
        "ONBOARDHEAT__Tank__VolumeLitres", "NaN", "Tank:VolumeLitres: takes a number of litres, 1 to 500, not 'NaN'")]
    [InlineData(
        "ONBOARDHEAT__Tank__VolumeLitres", "24,5", "Tank:VolumeLitres: takes a number of litres, 1 to 500, not '24,5'")]
    [InlineData(
        "ONBOARDHEAT__Tank__VolumeLitres__X", "1",
        "Tank:VolumeLitres:X: 'Tank:VolumeLitres' is a value and has nothing below it")]
    public void EnvironmentThatCannotBeTaken_IsNamed(string name, string text, string what) =>
        Assert.Equal($"{name}: {what}", Assert.Single(Read("{}", [(name, text)]).Problems));

    [Fact]
    public void RunWithNothingStated_AsksForVolumeAndAProbe()
    {
        var problems = Configuration.Read(File, "{}"u8.ToArray(), [], ConfigurationUse.Run).Problems;

        Assert.Equal(2, problems.Count);
        Assert.StartsWith("van.json: Tank:VolumeLitres: must be stated", problems[0], StringComparison.Ordinal);
        Assert.StartsWith("van.json: Probes: must name at least one probe", problems[1], StringComparison.Ordinal);
    }

    [Fact]
    public void FileThatIsNotThere_IsOneProblem() => Assert.Contains(
        "cannot be read", Assert.Single(Configuration.Load("/nowhere/van.json", [], ConfigurationUse.Any).Problems),
        StringComparison.Ordinal);

    private static IReadOnlyList<string> Problems(string json) => Read(json).Problems;

    private static Configuration Read(string json, (string Name, string Text)[]? environment = null) =>
        Configuration.Read(
        File,
        Encoding.UTF8.GetBytes(json),
        (environment ?? []).Select(e => new KeyValuePair<string, string>(e.Name, e.Text)),
        ConfigurationUse.Any);
}
