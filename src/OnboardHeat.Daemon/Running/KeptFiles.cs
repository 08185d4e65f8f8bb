namespace OnboardHeat.Daemon.Running;

/// <summary>Where the daemon keeps what it learnt.</summary>
internal static class KeptFiles
{
    /// <summary>The small file in the state folder; its second copy stands beside it.</summary>
    public static string PathIn(string folder) => Path.Combine(folder, "learnt.onboardheat");
}
