using System.Globalization;
using OnboardHeat.Core;
using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Screening;
using OnboardHeat.Core.Watch;

namespace OnboardHeat.Daemon.Demo;

/// <summary>
/// Lays a moment out on a sheet: the minutes big, a sentence, the tank as bars of heat, the coolant, then what is
/// wrong.
/// </summary>
internal sealed class DemoPage(Ink ink)
{
    /// <summary>Column at which the right half begins.</summary>
    private const int Right = 46;

    /// <summary>Bars for the tank: enough to see a layer, few enough to read.</summary>
    private const int TankBars = 6;

    private const int BarWidth = 24;

    /// <summary>Temperature of a full bar, degrees Celsius.</summary>
    private const double FullBarCelsius = 90;

    public void Lay(Sheet sheet, in DemoMoment moment, string pace, IReadOnlyList<string> lately)
    {
        var picture = moment.Picture;
        var date = moment.Time.ToString("ddd d MMM  HH:mm:ss", CultureInfo.InvariantCulture);
        sheet.Add(
            $" {ink.Bold("OnboardHeat")} {ink.Quiet("demo, simulated van")}", $"{date}  {ink.Quiet(pace)}", Right);
        sheet.Add(" " + ink.Quiet(Words.Road(moment.Truth)));
        sheet.Add();
        Minutes(sheet, moment);
        sheet.Add();
        TankAndCoolant(sheet, picture);
        sheet.Add();
        Alarms(sheet, picture);
        if (lately.Count > 0 && sheet.Free > 3)
        {
            sheet.Add();
            foreach (var line in lately.Skip(Math.Max(0, lately.Count - (sheet.Free - 2))))
            {
                sheet.Add(" " + ink.Quiet(Cut(line, sheet.Width - 2)));
            }
        }
    }

    private void Minutes(Sheet sheet, in DemoMoment moment)
    {
        var forecast = moment.Picture.Forecast;
        var number = forecast.ShowerMinutes is { } minutes ? Words.Minutes(minutes) : "-";
        var beside = forecast.ShowerMinutes is null
            ? ["minutes of shower", "", ""]
            : new[]
            {
                ink.Bold("minutes of shower"),
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{forecast.ShowerMinutesLow:0.0} to {forecast.ShowerMinutesHigh:0.0} at 90 %"),
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{forecast.MixedLitres:0} litres at {DemoDay.Description.Shower.MixedCelsius:0} °C"),
            };
        var top = moment.Picture.Tank.IsKnown ? moment.Picture.Tank.TopCelsius.Value : 20;
        for (var line = 0; line < BigFigures.Lines; line++)
        {
            sheet.Add("  " + ink.Warm(top, BigFigures.Line(number, line)), beside[line], 30);
        }

        sheet.Add();
        sheet.Add("  " + ink.Bold(Words.Shower(moment.Picture, moment.Time)));
    }

    private void TankAndCoolant(Sheet sheet, Picture picture)
    {
        string[] coolant =
        [
            ink.Quiet("coolant"),
            "to the tank   " + Shown(picture[Channel.Flow]),
            "from the tank " + Shown(picture[Channel.Return]),
            Circulation(picture),
            Heating(picture),
            "tray " + Shown(picture[Channel.Tray]) + ", air " + Shown(picture[Channel.Surroundings]),
            picture.Forecast.StoredEnergyKWh is { } kWh
                ? string.Create(CultureInfo.InvariantCulture, $"stored {kWh:0.00} kWh") : "",
        ];
        sheet.Add("  " + ink.Quiet("tank, 24 litres"), coolant[0], Right);
        var layers = picture.Tank.LayerCelsius;
        for (var bar = 0; bar < TankBars; bar++)
        {
            sheet.Add(layers.Count == 0 ? "" : Bar(layers, bar), coolant[bar + 1], Right);
        }
    }

    /// <summary>
    /// One bar of the tank, the top one first: the layers (bottom first) at that height, as long as they are warm.
    /// </summary>
    private string Bar(IReadOnlyList<double> layers, int bar)
    {
        var place = (TankBars - 0.5 - bar) / TankBars * layers.Count;
        var celsius = layers[Math.Clamp((int)place, 0, layers.Count - 1)];
        var eighths = (int)Math.Clamp(celsius / FullBarCelsius * BarWidth * 8, 1, BarWidth * 8);
        var full = new string('█', eighths / 8);
        var rest = eighths % 8 == 0 ? "" : ((char)('█' + 8 - (eighths % 8))).ToString();
        var figure = string.Create(CultureInfo.InvariantCulture, $"{celsius,6:0.0} °C");
        return "  " + ink.Warm(celsius, full + rest) + new string(' ', BarWidth - full.Length - rest.Length) + figure;
    }

    private string Circulation(Picture picture) => picture.Circuit switch
    {
        { IsEngineRunning: null } => ink.Quiet("engine not known"),
        { IsEngineRunning: false } => ink.Quiet("engine off"),
        { IsCirculating: true } => "coolant passes the coil",
        { IsCirculating: false } => ink.Bold("no coolant in the coil"),
        _ => "engine on",
    };

    private static string Heating(Picture picture) => picture.Forecast.HeatingWatts switch
    {
        null => "",
        > 50 and { } w => string.Create(CultureInfo.InvariantCulture, $"heats with {w:#,0} W"),
        < -50 and { } w => string.Create(CultureInfo.InvariantCulture, $"takes out {-w:#,0} W"),
        _ => "does not heat the tank",
    };

    private void Alarms(Sheet sheet, Picture picture)
    {
        if (picture.Alarms.Count == 0)
        {
            sheet.Add("  " + ink.Quiet("No alarm stands."));
            return;
        }

        foreach (var alarm in picture.Alarms)
        {
            if (sheet.Free < 3)
            {
                return;
            }

            var seen = alarm.State switch
            {
                AlarmState.Unacknowledged => "",
                AlarmState.Acknowledged => "  (seen)",
                AlarmState.ReturnedUnacknowledged => "  (over, not seen yet)",
                AlarmState.Latched => "  (held until repaired)",
                AlarmState.Shelved => "  (put aside)",
                _ => "  (out of service)",
            };
            var mark = alarm.Definition.Priority switch { AlarmPriority.Critical =>
                "!!", AlarmPriority.Warning => "! ", _ => "i " };
            sheet.Add($"  {ink.Alarm(alarm.Definition.Priority, $"{mark} {alarm.Path} ")}{ink.Quiet(seen)}");
            sheet.Wrap("     ", alarm.Because, "     ");
            if (alarm.Definition.Priority == AlarmPriority.Critical
                || (alarm.State == AlarmState.Unacknowledged && picture.Alarms.Count == 1))
            {
                for (var i = 0; i < alarm.WhatToDo.Count; i++)
                {
                    sheet.Wrap($"     {i + 1}.", alarm.WhatToDo[i], "        ");
                }
            }
        }
    }

    private string Shown(ScreenedReading reading) => reading switch
    {
        { IsGood: true } => ink.Warm(
            reading.Value, string.Create(CultureInfo.InvariantCulture, $"{reading.Value:0.0} °C")),
        { IsKnown: true } => ink.Quiet("no reading"),
        _ => ink.Quiet("none"),
    };

    private static string Cut(string text, int width) => text.Length <= width ? text : text[..(width - 1)] + "…";
}
