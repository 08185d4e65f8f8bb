namespace OnboardHeat.Daemon.Probing;

/// <summary>
/// Compares two probes that are held together, in one glass of water or in one hand. It waits until both are steady,
/// because a probe that still warms reads low by more than probes differ. The first named is taken as it is, and the
/// other learns the difference: so a tray probe can be compared with flow later without undoing flow against return.
/// </summary>
internal sealed class PairCheck(string reference, string other)
{
    /// <summary>Looks that are averaged: steps of 1/16 K then leave about 0.01 K.</summary>
    public const int Looks = 12;

    /// <summary>How far each may wander meanwhile, kelvin: four steps.</summary>
    public const double SteadyK = 0.25;

    /// <summary>
    /// What is no difference between two sound probes any more but a bad one, or two that are not together, kelvin.
    /// </summary>
    public const double MostK = 2;

    private readonly Queue<(double ReferenceC, double OtherC)> _looks = new();

    /// <summary>Whether both have been steady for long enough.</summary>
    public bool IsSteady { get; private set; }

    /// <summary>
    /// What must be added to the other one, its owner's offset counted, to read as the first; signed kelvin.
    /// </summary>
    public double OffsetKelvin { get; private set; }

    /// <summary>The temperature at which they were compared, °C.</summary>
    public double Celsius { get; private set; }

    /// <summary>Takes a look at the bus; what is missing for the check, or null.</summary>
    public string? Observe(BusSight sight)
    {
        if (sight.At(reference) is not { Celsius: { } referenceC })
        {
            _looks.Clear();
            return $"no reading from {reference}";
        }

        if (sight.At(other) is not { Celsius: { } otherC } probe)
        {
            _looks.Clear();
            return $"no reading from {other}";
        }

        _looks.Enqueue((referenceC, otherC - probe.LearntOffsetKelvin));
        if (_looks.Count > Looks)
        {
            _looks.Dequeue();
        }

        Celsius = _looks.Average(look => look.ReferenceC);
        OffsetKelvin = _looks.Average(look => look.ReferenceC - look.OtherC);
        IsSteady = _looks.Count == Looks && Spread(
            look => look.ReferenceC) <= SteadyK && Spread(look => look.OtherC) <= SteadyK;
        return null;
    }

    private double Spread(Func<(double ReferenceC, double OtherC), double> of) => _looks.Max(of) - _looks.Min(of);
}
