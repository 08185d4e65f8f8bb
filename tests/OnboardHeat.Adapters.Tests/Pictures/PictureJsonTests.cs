using System.Text;
using System.Text.Json;
using OnboardHeat.Adapters.Tests.Support;
using OnboardHeat.Core.Screening;
using OnboardHeat.Core.Shower;
using OnboardHeat.Core.Watch;
using OnboardHeat.Engine.Pictures;

namespace OnboardHeat.Adapters.Tests.Pictures;

public sealed class PictureJsonTests
{
    private static readonly PictureJson s_json = new("pass-hopper", SomeTurn.Fitted);

    [Fact]
    public void Turn_IsWrittenInTheFormThatOthersRelyOn()
    {
        var written = Encoding.UTF8.GetString(
            s_json.Write(SomeTurn.At(1234, alarms: SomeTurn.Alarm(AlarmKind.CoolantLoss))));

        // Key by key and in this order: a renamed key breaks somebody's dashboard, so it must be a decision.
        Assert.Equal(
            """
            {"v":1,"van":"pass-hopper","run":3,"elapsedS":1234,"time":"2026-05-28T16:20:34Z","timeTrusted":true,
            "channels":{"tank_top":{"celsius":61.3,"fault":null,"ageS":0},"tank_bottom":{"celsius":null,"fault":"missing","ageS":null},
            "flow":{"celsius":82,"fault":"bad-crc","ageS":4},"tray":{"celsius":null,"fault":"missing","ageS":null}},
            "signals":{"engine_running":true,"tray_wet":null},
            "tank":{"known":true,"drained":false,"layersCelsius":[48.5,55.25,61.3],"topCelsius":{"value":61.3,"deviation":0.4},
            "meanCelsius":{"value":55,"deviation":0.6},"bottomCelsius":{"value":48.5,"deviation":0.8}},
            "circuit":{"engineRunning":true,"engineInferred":false,"circulating":true},
            "forecast":{"storedEnergyKWh":1.235,"showerMinutes":5.4,"showerMinutesLow":4.86,"showerMinutesHigh":5.94,"mixedLitres":32.4,
            "ready":"at","readyAt":"2026-05-28T16:32:34Z","readyInS":720,"driveMinutesNeeded":null,"until":"beyond-7-days","usableUntil":null,
            "usableForS":null,"peakCelsius":null,"frostInS":null,"heatingWatts":1430,"lossCoefficientWPerK":0.71,"elapsedS":1234},
            "alarms":[{"alarm":"coolant-loss","subject":"","state":"unacknowledged","present":true,"acknowledged":false,"priority":"critical","sinceS":100,
            "because":"tray rose 9 K in 8 s while the engine ran","whatToDo":["Stop where it is safe to stop.","Engine off."]}],"works":false,"worksWords":[]}
            """.ReplaceLineEndings(""),
            written);
    }

    [Fact]
    public void UndatedRun_PromisesSecondsButNoClockTime()
    {
        var turn = SomeTurn.At(1234);
        var undated = turn with { Picture = turn.Picture with { Utc = null, IsUtcTrusted = false } };

        var form = s_json.FormOf(undated);

        Assert.Null(form.Time);
        Assert.Null(form.Forecast.ReadyAt);
        Assert.Equal(720, form.Forecast.ReadyInS);
    }

    [Fact]
    public void UntrustedClock_DatesNoPromise()
    {
        var turn = SomeTurn.At(1234);

        var form = s_json.FormOf(turn with { Picture = turn.Picture with { IsUtcTrusted = false } });

        Assert.NotNull(form.Time);
        Assert.Null(form.Forecast.ReadyAt);
    }

    [Fact]
    public void FigureThatIsNotFinite_IsNullAndNeverBreaksTheWriter()
    {
        var turn = SomeTurn.At(10);
        var broken = turn with { Picture = turn.Picture with { Forecast =
            new Forecast { ShowerMinutes = double.NaN, UsableForS = double.PositiveInfinity } } };

        using var document = JsonDocument.Parse(s_json.Write(broken));

        var forecast = document.RootElement.GetProperty("forecast");
        Assert.Equal(JsonValueKind.Null, forecast.GetProperty("showerMinutes").ValueKind);
        Assert.Equal(JsonValueKind.Null, forecast.GetProperty("usableForS").ValueKind);
    }

    [Fact]
    public void EveryNameOfEveryEnumeration_IsKebabCaseAndItsOwn()
    {
        string?[] names =
        [
            .. Enum.GetValues<AlarmState>().Select(PublicNames.Of),
            .. Enum.GetValues<AlarmPriority>().Select(PublicNames.Of),
        ];
        string?[] faults = [
            .. Enum.GetValues<ReadingFault>().Where(fault => fault != ReadingFault.None).Select(PublicNames.Of)];
        string[] plans = [
            .. Enum.GetValues<ReadyKind>().Select(PublicNames.Of),
            .. Enum.GetValues<UntilKind>().Skip(1).Select(PublicNames.Of)];

        Assert.All([.. names, .. faults, .. plans], name => Assert.Matches("^[a-z0-9]+(-[a-z0-9]+)*$", name));
        Assert.Equal(names.Length, names.Distinct().Count());
        Assert.Equal(faults.Length, faults.Distinct().Count());
        Assert.Null(PublicNames.Of(ReadingFault.None));
    }
}
