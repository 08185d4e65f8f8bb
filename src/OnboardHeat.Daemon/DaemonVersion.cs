namespace OnboardHeat.Daemon;

/// <summary>The version that was built.</summary>
internal static class DaemonVersion
{
    public static string Text { get; } = typeof(DaemonVersion).Assembly.GetName().Version?.ToString(3) ?? "unknown";
}
