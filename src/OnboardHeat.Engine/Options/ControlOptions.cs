namespace OnboardHeat.Engine.Options;

/// <summary>The door for commands beside a running daemon.</summary>
public sealed class ControlOptions
{
    /// <summary>
    /// Unix socket, absolute, at most 107 characters (the kernel's limit); default
    /// <c>/run/onboardheat/control.sock</c>. Its file mode says who may act.
    /// </summary>
    public string Socket { get; set; } = "/run/onboardheat/control.sock";
}
