using OnboardHeat.Core.Scans;

namespace OnboardHeat.Simulation;

/// <summary>A van on a plan, made from a kind and a seed.</summary>
/// <param name="Kind">What happens in it.</param>
/// <param name="Seed">Everything comes from it.</param>
/// <param name="Traits">The van.</param>
/// <param name="Plan">What it does.</param>
/// <param name="EventAtS">
/// When the thing that gives the kind its name begins, seconds; null for ordinary drives and nights.
/// </param>
internal sealed record Scenario(ScenarioKind Kind, int Seed, VanTraits Traits, DrivePlan Plan, double? EventAtS)
{
    /// <summary>The van at its start, ready to go.</summary>
    public SimulatedVan Start() => new(Traits, Plan, Seed);

    /// <summary>The same with other things fitted.</summary>
    public Scenario With(FittedSet fitted) => this with { Traits = Traits.With(fitted) };
}
