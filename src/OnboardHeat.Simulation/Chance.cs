namespace OnboardHeat.Simulation;

/// <summary>
/// Chance from a seed: the same seed gives the same numbers on every machine and every version of the runtime. The
/// generator is SplitMix64 (Steele, Lea, Flood 2014, published constants), which needs one word of state and no warming
/// up.
/// </summary>
internal sealed class Chance
{
    private ulong _state;

    /// <summary>
    /// A stream of its own for each purpose, so that one more number drawn here changes nothing there.
    /// </summary>
    public Chance(ulong seed, ulong stream = 0) => _state = Mix(seed + (stream * 0xD1B54A32D192ED03UL)) ^ stream;

    /// <summary>Evenly from 0 (included) to 1 (excluded).</summary>
    public double Share()
    {
        _state += 0x9E3779B97F4A7C15UL;
        return (Mix(_state) >> 11) * (1.0 / (1UL << 53));
    }

    /// <summary>Evenly between two limits.</summary>
    public double Between(double low, double high) => low + ((high - low) * Share());

    /// <summary>Evenly between two whole numbers, both included.</summary>
    public int Whole(int low, int high) => low + (int)((high - low + 1) * Share());

    /// <summary>True in this share of cases.</summary>
    public bool Happens(double probability) => Share() < probability;

    /// <summary>
    /// Near enough to a normal distribution (Irwin-Hall of twelve, exact variance, tails end at six sigma), and free of
    /// logarithms, whose last digit differs between processors.
    /// </summary>
    public double Normal()
    {
        var sum = -6.0;
        for (var i = 0; i < 12; i++)
        {
            sum += Share();
        }

        return sum;
    }

    /// <summary>
    /// A quick symmetric disturbance of standard deviation 1 (triangular, two draws), for the noise of every reading.
    /// </summary>
    public double Jitter() => (Share() + Share() - 1) * 2.449489742783178;

    private static ulong Mix(ulong z)
    {
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
        return z ^ (z >> 31);
    }
}
