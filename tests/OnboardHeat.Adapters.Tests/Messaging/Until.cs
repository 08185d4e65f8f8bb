namespace OnboardHeat.Adapters.Tests.Messaging;

/// <summary>
/// Waits for what another process or thread does. The limit only ends a test that has failed already; no claim rests on
/// it.
/// </summary>
internal static class Until
{
    private static readonly TimeSpan s_limit = TimeSpan.FromSeconds(15);

    public static Task HoldsAsync(Func<bool> condition, string what) => HoldsAsync(condition, () => what);

    public static async Task HoldsAsync(Func<bool> condition, Func<string> what)
    {
        var start = TimeProvider.System.GetTimestamp();
        while (!condition())
        {
            Assert.True(
                TimeProvider.System.GetElapsedTime(start) < s_limit,
                $"still not so after {s_limit.TotalSeconds} s: {what()}");
            await Task.Delay(TimeSpan.FromMilliseconds(10), TimeProvider.System);
        }
    }
}
