using OnboardHeat.Core.Scans;

namespace OnboardHeat.Core.Screening;

/// <summary>What the believed tank probes of one scan say together.</summary>
/// <param name="Count">How many were believed; with zero the rest says nothing.</param>
/// <param name="Coldest">Coldest of them, degrees Celsius.</param>
/// <param name="Warmest">Warmest of them, degrees Celsius.</param>
/// <param name="Mean">Mean of them, degrees Celsius.</param>
internal readonly record struct TankReading(int Count, double Coldest, double Warmest, double Mean)
{
    public static TankReading Of(ScreenedScan scan)
    {
        double sum = 0, coldest = double.MaxValue, warmest = double.MinValue;
        var count = 0;
        foreach (var channel in Channels.OfTank)
        {
            var reading = scan[channel];
            if (reading.IsGood)
            {
                count++;
                sum += reading.Value;
                coldest = Math.Min(coldest, reading.Value);
                warmest = Math.Max(warmest, reading.Value);
            }
        }

        return new TankReading(count, coldest, warmest, count == 0 ? 0 : sum / count);
    }
}
