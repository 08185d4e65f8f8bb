using System.Collections.Immutable;
using OnboardHeat.Core.Quantities;
using OnboardHeat.Core.Scans;
using OnboardHeat.Engine;
using OnboardHeat.Engine.Pictures;

namespace OnboardHeat.Messaging.Topics;

/// <summary>
/// The plain values: one number or word a topic, for whoever wants no JSON. Deadbands are a change that a person would
/// remark (common practice, no source).
/// </summary>
internal static class PlainValues
{
    public const string Unknown = "unknown";

    public static ImmutableArray<Word> Words { get; } =
    [
        new("ready", turn => PublicNames.Of(turn.Picture.Forecast.Ready)),
        new("until", turn => PublicNames.Of(turn.Picture.Forecast.Until)),
        new("engine-running", turn => YesNo(turn.Picture.Circuit.IsEngineRunning)),
        new("circulating", turn => YesNo(turn.Picture.Circuit.IsCirculating)),
        new("works", turn => YesNo(turn.Picture.IsInWorks)),
    ];

    public static ImmutableArray<Figure> FiguresFor(FittedSet fitted)
    {
        var figures = ImmutableArray.CreateBuilder<Figure>();
        figures.AddRange(
            new Figure("shower-minutes", 0.1, 1, turn => turn.Picture.Forecast.ShowerMinutes),
            new Figure("shower-minutes-low", 0.1, 1, turn => turn.Picture.Forecast.ShowerMinutesLow),
            new Figure("shower-minutes-high", 0.1, 1, turn => turn.Picture.Forecast.ShowerMinutesHigh),
            new Figure("mixed-litres", 0.5, 1, turn => turn.Picture.Forecast.MixedLitres),
            new Figure("stored-energy-kwh", 0.01, 3, turn => turn.Picture.Forecast.StoredEnergyKWh),
            new Figure("ready-in-minutes", 1, 0, turn => turn.Picture.Forecast.ReadyInS / 60),
            new Figure("usable-for-minutes", 10, 0, turn => turn.Picture.Forecast.UsableForS / 60),
            new Figure("frost-in-minutes", 10, 0, turn => turn.Picture.Forecast.FrostInS / 60),
            new Figure("heating-watts", 20, 0, turn => turn.Picture.Forecast.HeatingWatts),
            new Figure("loss-coefficient-w-per-k", 0.02, 3, turn => turn.Picture.Forecast.LossCoefficientWPerK),
            new Figure("tank-top-celsius", 0.2, 1, turn => Tank(turn, turn.Picture.Tank.TopCelsius)),
            new Figure("tank-mean-celsius", 0.2, 1, turn => Tank(turn, turn.Picture.Tank.MeanCelsius)),
            new Figure("tank-bottom-celsius", 0.2, 1, turn => Tank(turn, turn.Picture.Tank.BottomCelsius)));
        foreach (var channel in Channels.All)
        {
            if (fitted.Has(channel))
            {
                figures.Add(ChannelFigure(channel));
            }
        }

        return figures.ToImmutable();
    }

    private static Figure ChannelFigure(Channel channel) => new(
        $"channel-celsius/{Channels.NameOf(channel)}", 0.2, 2,
        turn => turn.Picture[channel] is { IsGood: true } reading ? reading.Value : null);

    private static double? Tank(Turn turn, Estimate estimate) => turn.Picture.Tank.IsKnown ? estimate.Value : null;

    private static string YesNo(bool? value) => value switch { true => "yes", false => "no", null => Unknown };
}
