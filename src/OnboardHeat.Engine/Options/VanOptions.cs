namespace OnboardHeat.Engine.Options;

/// <summary>Which van this is.</summary>
public sealed class VanOptions
{
    /// <summary>
    /// Short name, 1 to 32 of a-z, 0-9 and '-'; default <c>van</c>. It stands in topics, so that two vans can share a
    /// broker.
    /// </summary>
    public string Id { get; set; } = "van";
}
