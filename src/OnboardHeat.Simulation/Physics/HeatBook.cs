namespace OnboardHeat.Simulation.Physics;

/// <summary>
/// Books every joule that crosses the border around tank, coil, lines, engine and radiator. What is stored must equal
/// what came in less what went out; the tests hold the model to that.
/// </summary>
internal sealed class HeatBook
{
    /// <summary>
    /// Heat brought in so far, joules: combustion, element, sprayed or poured-in liquid counted from 0 °C.
    /// </summary>
    public double InJ { get; private set; }

    /// <summary>
    /// Heat gone out so far, joules: losses, radiator, cab heater, draws net of the cold water, spilt coolant.
    /// </summary>
    public double OutJ { get; private set; }

    /// <summary>Of that, what the tank alone lost to its surroundings, joules.</summary>
    public double TankLossJ { get; private set; }

    public void In(double joules) => InJ += joules;

    public void Out(double joules) => OutJ += joules;

    public void TankLoss(double joules)
    {
        TankLossJ += joules;
        OutJ += joules;
    }
}
