using System.Text.Json;
using OnboardHeat.Core.Quantities;
using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Screening;
using OnboardHeat.Core.Shower;
using OnboardHeat.Core.Tank;
using OnboardHeat.Core.Watch;

namespace OnboardHeat.Engine.Pictures;

/// <summary>
/// Puts a turn into its public form. Knows the van's id and what is fitted, because a picture lists every channel there
/// could be.
/// </summary>
public sealed class PictureJson(string vanId, FittedSet fitted)
{
    // A thousandth of a kelvin, a minute or a kilowatt-hour is below what any probe tells, and keeps a picture near 2
    // KB.
    private const int Decimals = 3;

    /// <summary>The turn as UTF-8 JSON on one line.</summary>
    public byte[] Write(Turn turn) =>
        JsonSerializer.SerializeToUtf8Bytes(FormOf(turn), PictureJsonContext.Default.PictureForm);

    /// <summary>The turn in its public form.</summary>
    public PictureForm FormOf(Turn turn)
    {
        ArgumentNullException.ThrowIfNull(turn);
        var picture = turn.Picture;
        return new PictureForm
        {
            Version = PictureForm.CurrentVersion,
            Van = vanId,
            Run = picture.Run,
            ElapsedS = Rounded(picture.Elapsed.TotalSeconds) ?? 0,
            Time = TimeOf(picture.Utc),
            TimeTrusted = picture.IsUtcTrusted,
            Channels = ChannelsOf(picture),
            Signals = SignalsOf(turn.Scan),
            Tank = FormOf(picture.Tank),
            Circuit = new CircuitForm(
                picture.Circuit.IsEngineRunning, picture.Circuit.IsEngineInferred, picture.Circuit.IsCirculating),
            Forecast = FormOf(picture.Forecast, StartOf(picture)),
            Alarms = [.. picture.Alarms.Select(FormOf)],
            Works = picture.IsInWorks,
            WorksWords = picture.Works.Words,
        };
    }

    /// <summary>One alarm in its public form.</summary>
    public static AlarmForm FormOf(AlarmSnapshot alarm)
    {
        ArgumentNullException.ThrowIfNull(alarm);
        return new AlarmForm
        {
            Alarm = alarm.Definition.Name,
            Subject = alarm.Subject,
            State = PublicNames.Of(alarm.State),
            Present = alarm.IsPresent,
            Acknowledged = alarm.IsAcknowledged,
            Priority = PublicNames.Of(alarm.Definition.Priority),
            SinceS = Rounded(alarm.SinceS) ?? 0,
            Because = alarm.Because,
            WhatToDo = alarm.WhatToDo,
        };
    }

    /// <summary>A wall-clock label as the forms spell it; null stays null.</summary>
    public static string? TimeOf(DateTimeOffset? time) =>
        time?.ToUniversalTime().ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", System.Globalization.CultureInfo.InvariantCulture);

    // The wall clock at which the run began; what a forecast's seconds are added to. Only a trusted clock dates a
    // promise.
    private static DateTimeOffset? StartOf(Core.Picture picture) =>
        picture.IsUtcTrusted ? picture.Utc - picture.Elapsed : null;

    private static TankForm FormOf(TankEstimate tank) => new()
    {
        Known = tank.IsKnown,
        Drained = tank.IsDrained,
        LayersCelsius = [.. tank.LayerCelsius.Select(celsius => Rounded(celsius) ?? 0)],
        TopCelsius = FormOf(tank.IsKnown, tank.TopCelsius),
        MeanCelsius = FormOf(tank.IsKnown, tank.MeanCelsius),
        BottomCelsius = FormOf(tank.IsKnown, tank.BottomCelsius),
    };

    private static EstimateForm? FormOf(bool isKnown, Estimate estimate) =>
        isKnown ? new EstimateForm(Rounded(estimate.Value), Rounded(estimate.Deviation)) : null;

    private static ForecastForm FormOf(Forecast forecast, DateTimeOffset? runStart) => new()
    {
        ElapsedS = Rounded(forecast.ElapsedS) ?? 0,
        StoredEnergyKWh = Rounded(forecast.StoredEnergyKWh),
        ShowerMinutes = Rounded(forecast.ShowerMinutes),
        ShowerMinutesLow = Rounded(forecast.ShowerMinutesLow),
        ShowerMinutesHigh = Rounded(forecast.ShowerMinutesHigh),
        MixedLitres = Rounded(forecast.MixedLitres),
        Ready = PublicNames.Of(forecast.Ready),
        ReadyAt = TimeOf(After(runStart, forecast.ElapsedS, forecast.ReadyInS)),
        ReadyInS = Rounded(forecast.ReadyInS),
        DriveMinutesNeeded = Rounded(forecast.DriveMinutesNeeded),
        Until = PublicNames.Of(forecast.Until),
        UsableUntil = TimeOf(After(runStart, forecast.ElapsedS, forecast.UsableForS)),
        UsableForS = Rounded(forecast.UsableForS),
        PeakCelsius = Rounded(forecast.PeakCelsius),
        FrostInS = Rounded(forecast.FrostInS),
        HeatingWatts = Rounded(forecast.HeatingWatts),
        LossCoefficientWPerK = Rounded(forecast.LossCoefficientWPerK),
    };

    private static DateTimeOffset? After(DateTimeOffset? runStart, double elapsedS, double? inS) =>
        inS is { } seconds && double.IsFinite(seconds) ? runStart?.AddSeconds(elapsedS + seconds) : null;

    private static double? Rounded(double? value) =>
        value is { } number && double.IsFinite(number) ? Math.Round(number, Decimals) : null;

    private Dictionary<string, ChannelForm> ChannelsOf(Core.Picture picture)
    {
        var forms = new Dictionary<string, ChannelForm>(Channels.Count);
        foreach (var channel in Channels.All)
        {
            if (fitted.Has(channel))
            {
                var reading = picture[channel];
                forms.Add(Channels.NameOf(channel), reading.IsKnown
                    ? new ChannelForm(Rounded(reading.Value), PublicNames.Of(reading.Fault), Rounded(reading.AgeS))
                    : new ChannelForm(null, PublicNames.Of(reading.Fault), null));
            }
        }

        return forms;
    }

    private Dictionary<string, bool?> SignalsOf(Scan scan)
    {
        var forms = new Dictionary<string, bool?>(Signals.Count);
        foreach (var signal in Signals.All)
        {
            if (fitted.Has(signal))
            {
                forms.Add(Signals.NameOf(signal), scan[signal]);
            }
        }

        return forms;
    }
}
