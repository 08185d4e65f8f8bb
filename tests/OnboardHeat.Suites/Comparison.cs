using OnboardHeat.Core.Shower;

namespace OnboardHeat.Suites;

/// <summary>A forecast beside the truth at one moment.</summary>
internal readonly record struct Comparison(
    bool IsTold, double StoredKWh, double TrueKWh, double Minutes, double Low, double High, double TrueMinutes)
{
    public static Comparison Of(Forecast forecast, double trueKWh, double trueMinutes) =>
        forecast is
        {
            StoredEnergyKWh: { } kWh, ShowerMinutes: { } minutes, ShowerMinutesLow: { } low,
            ShowerMinutesHigh: { } high,
        }
            ? new Comparison(true, kWh, trueKWh, minutes, low, high, trueMinutes)
            : new Comparison(false, 0, trueKWh, 0, 0, 0, trueMinutes);
}
