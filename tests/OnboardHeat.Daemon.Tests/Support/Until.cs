namespace OnboardHeat.Daemon.Tests.Support;

/// <summary>Waits for what another process does.</summary>
internal static class Until
{
    private static readonly TimeSpan s_patience = TimeSpan.FromSeconds(60);

    public static async Task HoldsAsync(Func<bool> holds, string what)
    {
        var began = TimeProvider.System.GetTimestamp();
        while (!holds())
        {
            Assert.True(TimeProvider.System.GetElapsedTime(began) < s_patience, $"in vain: {what}");
            await Task.Delay(TimeSpan.FromMilliseconds(20), TimeProvider.System, CancellationToken.None);
        }
    }
}
