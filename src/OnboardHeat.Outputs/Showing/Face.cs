using System.Globalization;
using OnboardHeat.Core;
using OnboardHeat.Core.Shower;
using OnboardHeat.Core.Watch;

namespace OnboardHeat.Outputs.Showing;

/// <summary>
/// What the small display says: an alarm with its reason when one stands that is shown, works when they are under way,
/// and else how long a shower lasts, large enough to be read from the other seat.
/// </summary>
internal static class Face
{
    /// <summary>Draws the picture of a moment.</summary>
    public static void Draw(Canvas canvas, Picture picture)
    {
        canvas.Clear();
        if (picture.Alarms.FirstOrDefault(IsShown) is { } alarm)
        {
            DrawAlarm(canvas, alarm, picture.IsInWorks);
        }
        else if (picture.IsInWorks)
        {
            // How far bleeding has come is said last at length, and comes first where there is little room.
            DrawWords(canvas, "WORKS: NOT WATCHED", [.. picture.Works.Words.Skip(1).Reverse()]);
        }
        else
        {
            DrawShower(canvas, picture);
        }
    }

    /// <summary>Advice waits on the page; what was put aside or is out of service is not shown.</summary>
    private static bool IsShown(AlarmSnapshot alarm) => alarm.Definition.Priority > AlarmPriority.Advice
        && alarm.State is not (AlarmState.Normal or AlarmState.Shelved or AlarmState.OutOfService)
        && !(alarm.IsAcknowledged && alarm.Definition.Priority == AlarmPriority.Warning);

    private static void DrawAlarm(Canvas canvas, AlarmSnapshot alarm, bool isInWorks)
    {
        var title = $"{(isInWorks ? "WORKS, " : "")}{alarm.Definition.Name.Replace('-', ' ').ToUpperInvariant()}";
        var about = alarm.Subject.Length > 0 ? $"{alarm.Subject}: " : "";
        var toDo = alarm.WhatToDo.Count > 0 ? alarm.WhatToDo[0] : alarm.Because;
        // The small panel has three rows: what to do matters more than why.
        DrawWords(canvas, title, canvas.Height == 64 ? [about + alarm.Because, toDo] : [about + toDo]);
    }

    private static void DrawWords(Canvas canvas, string title, IReadOnlyList<string> sentences)
    {
        while (Canvas.WidthOf(title) > Canvas.Width)
        {
            title = title[..^1];
        }

        canvas.Write(1, 0, title);
        canvas.Invert(0, Canvas.RowPixels);
        var y = Canvas.RowPixels + (canvas.Height == 64 ? 2 : 0);
        foreach (var sentence in sentences)
        {
            foreach (var row in RowsOf(sentence))
            {
                if (y + Canvas.RowPixels > canvas.Height)
                {
                    return;
                }

                canvas.Write(0, y, row);
                y += Canvas.RowPixels;
            }

            // A little air between sentences, where the last row can spare it.
            y += canvas.Height == 64 ? 2 : 0;
        }
    }

    private static void DrawShower(Canvas canvas, Picture picture)
    {
        var forecast = picture.Forecast;
        var isTold = !picture.Tank.IsDrained && forecast.ShowerMinutes is not null;
        var minutes = isTold && forecast.ShowerMinutes is { } known
            ? known.ToString(known < 9.95 ? "0.0" : "0", CultureInfo.InvariantCulture)
            : "--";
        var isTall = canvas.Height == 64;
        var scale = isTall ? 5 : 3;
        var x = canvas.Write(0, isTall ? 4 : 0, minutes, scale);
        canvas.Write(Math.Min(x + 2, Canvas.Width - Canvas.WidthOf("min")), isTall ? 4 : 0, "min");
        if (isTold && forecast.ShowerMinutesLow is { } low && forecast.ShowerMinutesHigh is { } high)
        {
            var range = string.Create(CultureInfo.InvariantCulture, $"{low:0.0}-{high:0.0}");
            canvas.Write(Canvas.Width - Canvas.WidthOf(range), isTall ? 34 : 14, range);
        }

        var y = isTall ? 47 : 24;
        canvas.Write(0, y, Ready(picture));
        if (isTall)
        {
            canvas.Write(0, y + Canvas.RowPixels + 1, Standing(picture));
        }
    }

    private static string Ready(Picture picture) => (picture.Tank.IsDrained, picture.Forecast.Ready) switch
    {
        (true, _) => "tank is drained",
        (_, ReadyKind.Now) => "ready",
        (_, ReadyKind.At) when picture.Forecast.ReadyInS is { } inS => $"ready in {Span(inS)}",
        (_, ReadyKind.NotAtThisRate) => "not ready at this rate",
        (_, ReadyKind.NotHeating) => "not heating",
        _ => picture.Tank.IsKnown ? "" : "getting to know it",
    };

    private static string Standing(Picture picture)
    {
        var top = picture.Tank.IsKnown
            ? string.Create(CultureInfo.InvariantCulture, $"top {picture.Tank.TopCelsius.Value:0}°")
            : "";
        var until = picture.Forecast switch
        {
            _ when !picture.Tank.IsKnown => "",
            { Until: UntilKind.At, UsableForS: { } forS } => $"hot for {Span(forS)}",
            { Until: UntilKind.BeyondSevenDays } => "hot for days",
            _ => "",
        };
        return until.Length == 0 ? top : $"{top}  {until}";
    }

    private static string Span(double seconds) => seconds < 5400
        ? string.Create(CultureInfo.InvariantCulture, $"{Math.Max(1, Math.Round(seconds / 60)):0} min")
        : string.Create(CultureInfo.InvariantCulture, $"{seconds / 3600:0} h");

    /// <summary>Breaks a sentence between words; a word that is too long is cut.</summary>
    private static IEnumerable<string> RowsOf(string sentence)
    {
        var row = "";
        foreach (var word in sentence.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            var longer = row.Length == 0 ? word : $"{row} {word}";
            if (Canvas.WidthOf(longer) <= Canvas.Width + 1)
            {
                row = longer;
                continue;
            }

            yield return row;
            row = word;
        }

        yield return row;
    }
}
