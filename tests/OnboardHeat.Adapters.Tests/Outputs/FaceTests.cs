using System.Text;
using OnboardHeat.Adapters.Tests.Support;
using OnboardHeat.Core;
using OnboardHeat.Core.Watch;
using OnboardHeat.Core.Works;
using OnboardHeat.Outputs.Showing;

namespace OnboardHeat.Adapters.Tests.Outputs;

/// <summary>
/// What is to be seen on the small display, as images that were looked at: a letter a pixel in `Screens`. Rewritten
/// with ONBOARDHEAT_GOLDEN=write; then look at them again.
/// </summary>
public sealed class FaceTests
{
    public static TheoryData<string, int> Screens()
    {
        var data = new TheoryData<string, int>();
        string[] names = ["shower", "long-shower", "nothing-known", "loss", "rating", "works", "bleeding", "drained"];
        foreach (var name in names)
        {
            data.Add(name, 64);
            data.Add(name, 32);
        }

        return data;
    }

    [Theory]
    [MemberData(nameof(Screens))]
    public void Screen_LooksAsItWasSeen(string name, int height)
    {
        var canvas = new Canvas(height);
        Face.Draw(canvas, PictureOf(name));
        var file = Path.Combine(Folder(), $"{name}-{height}.txt");
        if (Environment.GetEnvironmentVariable("ONBOARDHEAT_GOLDEN") == "write")
        {
            File.WriteAllText(file, Seen(canvas));
        }

        Assert.Equal(File.ReadAllText(file), Seen(canvas));
    }

    [Fact]
    public void EveryAlarmsWords_StayOnThePanel()
    {
        foreach (var row in AlarmTable.Rows.Where(row => row.Priority > AlarmPriority.Advice))
        {
            var canvas = new Canvas(32);
            Face.Draw(canvas, SomeTurn.At(100, alarms: SomeTurn.Alarm(row.Kind, subject: "tank_middle")).Picture);
            Assert.True(Lit(canvas, 0, 8) > 300, $"{row.Name}: the headline is dark on light");
            Assert.True(Lit(canvas, 8, 32) > 50, $"{row.Name}: something stands below it");
        }
    }

    [Theory]
    [InlineData(32)]
    [InlineData(64)]
    public void AlarmDuringWorks_SaysInItsHeadlineThatWorksAreUnderWay(int height)
    {
        var picture = SomeTurn.At(100, alarms: SomeTurn.Alarm(AlarmKind.TankOverTemperature)).Picture;
        var (with, without) = (new Canvas(height), new Canvas(height));
        Face.Draw(with, picture with { Works = new WorksReport { IsUnderWay = true } });
        Face.Draw(without, picture);
        Assert.NotEqual(without.Bytes[..Canvas.Width].ToArray(), with.Bytes[..Canvas.Width].ToArray());
        Assert.Equal(without.Bytes[Canvas.Width..].ToArray(), with.Bytes[Canvas.Width..].ToArray());
    }

    [Fact]
    public void Advice_DoesNotTakeThePlaceOfTheMinutes()
    {
        var (with, without) = (new Canvas(64), new Canvas(64));
        Face.Draw(with, SomeTurn.At(100, alarms: SomeTurn.Alarm(AlarmKind.ScaldRisk)).Picture);
        Face.Draw(without, SomeTurn.At(100).Picture);
        Assert.Equal(without.Bytes.ToArray(), with.Bytes.ToArray());
    }

    private static Picture PictureOf(string name) => name switch
    {
        "shower" => SomeTurn.At(100).Picture,
        "long-shower" => SomeTurn.At(100, showerMinutes: 12.4, topCelsius: 71).Picture,
        "nothing-known" => SomeTurn.At(100).Picture with
        {
            Tank = Core.Tank.TankEstimate.Unknown,
            Forecast = Core.Shower.Forecast.Unknown,
        },
        "loss" => SomeTurn.At(100, alarms: SomeTurn.Alarm(AlarmKind.CoolantLoss)).Picture,
        "rating" => SomeTurn.At(100, alarms: SomeTurn.Alarm(AlarmKind.RatingExceeded, subject: "heater-hose")).Picture,
        "bleeding" => SomeTurn.At(100).Picture with
        {
            Works = new WorksReport
            {
                IsUnderWay = true, AgeS = 2700, Flow = LineWarmth.Warm, Return = LineWarmth.Warm,
                Bleeding = BleedingStep.Circulating, CanShowHeat = true, CirculatesForS = 184,
            },
        },
        "drained" => SomeTurn.At(100).Picture with { Tank = Core.Tank.TankEstimate.Unknown with { IsDrained = true } },
        _ => SomeTurn.At(100).Picture with
        {
            Works = new WorksReport
            {
                IsUnderWay = true, AgeS = 1500, Flow = LineWarmth.Warm, Return = LineWarmth.Cold,
                Bleeding = BleedingStep.OneLineOnly,
            },
        },
    };

    private static string Seen(Canvas canvas)
    {
        var seen = new StringBuilder();
        for (var y = 0; y < canvas.Height; y++)
        {
            for (var x = 0; x < Canvas.Width; x++)
            {
                seen.Append(canvas[x, y] ? '#' : '.');
            }

            seen.Append('\n');
        }

        return seen.ToString();
    }

    private static int Lit(Canvas canvas, int fromY, int untilY)
    {
        var lit = 0;
        for (var y = fromY; y < untilY; y++)
        {
            for (var x = 0; x < Canvas.Width; x++)
            {
                lit += canvas[x, y] ? 1 : 0;
            }
        }

        return lit;
    }

    private static string Folder()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "OnboardHeat.sln")))
        {
            folder = folder.Parent ?? throw new InvalidOperationException("These tests run inside the source tree.");
        }

        return Path.Combine(folder.FullName, "tests", "OnboardHeat.Adapters.Tests", "Outputs", "Screens");
    }
}
