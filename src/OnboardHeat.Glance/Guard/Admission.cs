namespace OnboardHeat.Glance.Guard;

/// <summary>The answer to whether a request may be served.</summary>
/// <param name="Status">0 when admitted, else the HTTP status to refuse with.</param>
/// <param name="Message">Why not, in words for a person; empty when admitted.</param>
internal readonly record struct Admission(int Status, string Message)
{
    public static Admission Granted { get; } = new(0, "");

    public bool IsGranted => Status == 0;
}
