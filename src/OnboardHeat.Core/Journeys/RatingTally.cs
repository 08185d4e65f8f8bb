using OnboardHeat.Core.Circuit;
using OnboardHeat.Core.Screening;

namespace OnboardHeat.Core.Journeys;

/// <summary>Counts how long each fitted part was above its rating.</summary>
internal sealed class RatingTally(IReadOnlyList<CircuitPart> parts)
{
    private readonly double[] _overS = new double[parts.Count];
    private readonly double[] _mostK = new double[parts.Count];

    public void Begin()
    {
        Array.Clear(_overS);
        Array.Clear(_mostK);
    }

    public void Add(ScreenedScan scan, double stepS)
    {
        for (var i = 0; i < _overS.Length; i++)
        {
            var part = parts[i];
            var reading = scan[part.On];
            if (reading.IsGood && reading.Value > part.MaxCelsius)
            {
                _overS[i] += stepS;
                _mostK[i] = Math.Max(_mostK[i], reading.Value - part.MaxCelsius);
            }
        }
    }

    public List<PartMinutes> Result()
    {
        List<PartMinutes> over = [];
        for (var i = 0; i < _overS.Length; i++)
        {
            if (_overS[i] > 0)
            {
                over.Add(new PartMinutes(parts[i].Id, _overS[i] / 60, _mostK[i]));
            }
        }

        return over;
    }
}
