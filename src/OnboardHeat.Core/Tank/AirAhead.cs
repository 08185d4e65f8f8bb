namespace OnboardHeat.Core.Tank;

/// <summary>Air by the tank in the time to come, for forecasts.</summary>
/// <param name="Swing">
/// The daily wave, where the tank has stood long enough for it; null: the air stays as it is.
/// </param>
/// <param name="ShownCelsius">Air as its probe shows it now, °C.</param>
/// <param name="OffsetK">What the probe shows too little, K.</param>
internal readonly record struct AirAhead(AirSwing? Swing, double ShownCelsius, double OffsetK)
{
    /// <summary>The coldest that it will ever be, °C; it may not get that cold.</summary>
    public double LowestCelsius => (Swing?.LowestCelsius ?? ShownCelsius) + OffsetK;

    /// <summary>Air at a later time of the run, °C.</summary>
    public double At(double elapsedS) => (Swing?.At(elapsedS) ?? ShownCelsius) + OffsetK;
}
