namespace OnboardHeat.Limits.Wires;

/// <summary>Waits for something that must come, and says what did not.</summary>
internal static class Patience
{
    private static readonly TimeSpan s_look = TimeSpan.FromMilliseconds(5);

    /// <summary>Waits; how many seconds it took.</summary>
    /// <exception cref="TimeoutException">It did not come in time.</exception>
    public static async Task<double> UntilAsync(Func<bool> holds, double withinS, string what)
    {
        var began = TimeProvider.System.GetTimestamp();
        while (!holds())
        {
            if (TimeProvider.System.GetElapsedTime(began).TotalSeconds > withinS)
            {
                throw new TimeoutException(FormattableString.Invariant($"not within {withinS:0} s: {what}"));
            }

            await Task.Delay(s_look, TimeProvider.System, CancellationToken.None);
        }

        return TimeProvider.System.GetElapsedTime(began).TotalSeconds;
    }
}
