using System.Globalization;
using OnboardHeat.Core;
using OnboardHeat.Core.Shower;
using OnboardHeat.Simulation;

namespace OnboardHeat.Daemon.Demo;

/// <summary>Sentences that people plan by, and how figures are said.</summary>
internal static class Words
{
    public static string Clock(DateTimeOffset time) => time.ToString("HH:mm:ss", CultureInfo.InvariantCulture);

    public static string Celsius(double celsius) => string.Create(CultureInfo.InvariantCulture, $"{celsius:0.0} °C");

    public static string Minutes(double minutes) => string.Create(CultureInfo.InvariantCulture, $"{minutes:0.0}");

    /// <summary>A span as a person says it: 14 s, 6 min 20 s, 1 h 10 min.</summary>
    public static string Span(TimeSpan span) => span.TotalSeconds < 100
        ? string.Create(CultureInfo.InvariantCulture, $"{span.TotalSeconds:0} s")
        : span.TotalMinutes < 100
            ? string.Create(
                CultureInfo.InvariantCulture,
                $"{(int)span.TotalMinutes} min{(span.Seconds == 0 ? "" : $" {span.Seconds} s")}")
            : string.Create(CultureInfo.InvariantCulture, $"{(int)span.TotalHours} h {span.Minutes} min");

    /// <summary>Where the van is, from the simulation.</summary>
    public static string Road(Truth truth)
    {
        var road = truth switch
        {
            { IsEngineOn: false, SpeedKmh: < 1 } => "parked, engine off",
            { SpeedKmh: < 1 } => "standing, engine idling",
            { Road: LegKind.Town } => "through a town",
            { Road: LegKind.Country } => "on a country road",
            { Road: LegKind.Motorway } => "on the motorway",
            { Road: LegKind.Climb } => "up the pass",
            { Road: LegKind.Descent } => "down the pass",
            _ => "driving",
        };
        var speed = truth.SpeedKmh < 1 ? "" : string.Create(CultureInfo.InvariantCulture, $", {truth.SpeedKmh:0} km/h");
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{road}{speed}, {truth.AltitudeM:#,0} m, {truth.OutsideCelsius:0} °C outside");
    }

    /// <summary>What the forecast means for a shower.</summary>
    public static string Shower(Picture picture, DateTimeOffset now)
    {
        var forecast = picture.Forecast;
        var useful = DemoDay.Description.Shower.UsefulMinutes;
        if (forecast.ShowerMinutes is not { } minutes)
        {
            return "Nothing can be told yet.";
        }

        if (minutes >= useful || forecast.Ready == ReadyKind.Now)
        {
            return forecast.Until switch
            {
                UntilKind.At => $"Warm enough until {Day(now, forecast.UsableForS ?? 0)}.",
                UntilKind.BeyondSevenDays => "Warm enough for more than a week.",
                _ => $"Enough for a shower of {useful:0} minutes.",
            };
        }

        return (forecast.Ready, forecast) switch
        {
            (ReadyKind.At, { ReadyInS: { } s }) =>
                $"A shower of {useful:0} minutes in about {About(s / 60)} of driving.",
            (ReadyKind.NotAtThisRate, _) => $"At this rate {useful:0} minutes of shower will not be reached.",
            (_, { DriveMinutesNeeded: { } drive }) => $"Drive about {About(drive)} for a shower of {useful:0} minutes.",
            (ReadyKind.NotHeating, _) => "Nothing heats the tank.",
            _ => "",
        };
    }

    private static string About(double minutes) =>
        string.Create(CultureInfo.InvariantCulture, $"{Math.Max(1, minutes):0} min");

    private static string Day(DateTimeOffset now, double seconds)
    {
        var then = now.AddSeconds(seconds);
        var clock = then.ToString("HH:mm", CultureInfo.InvariantCulture);
        return (then.Date - now.Date).Days switch
        {
            0 => clock,
            1 => $"{clock} tomorrow",
            _ => $"{clock} on {then.ToString("dddd", CultureInfo.InvariantCulture)}",
        };
    }
}
