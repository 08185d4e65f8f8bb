namespace OnboardHeat.Daemon;

/// <summary>
/// How a command ends. The numbers follow the common set of sysexits.h (BSD), so that a service manager can tell them
/// apart.
/// </summary>
internal static class ExitCode
{
    /// <summary>All is done.</summary>
    public const int Done = 0;

    /// <summary>The command line cannot be understood.</summary>
    public const int Usage = 64;

    /// <summary>A file that was given cannot be taken.</summary>
    public const int BadInput = 65;

    /// <summary>An action, and no daemon to take it.</summary>
    public const int NoDaemon = 69;

    /// <summary>An end that nobody asked for.</summary>
    public const int Failed = 70;

    /// <summary>The configuration cannot be taken; starting again will not help.</summary>
    public const int BadConfiguration = 78;
}
