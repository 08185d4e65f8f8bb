namespace OnboardHeat.Glance.Api;

/// <summary>What a page sends to do something.</summary>
/// <param name="Action">Name of the action: <c>acknowledge</c>, <c>shelve</c>, <c>repaired</c> and so on.</param>
/// <param name="Target">What it concerns; may be empty.</param>
/// <param name="Text">Words with it; may be empty.</param>
internal sealed record ActionRequest(string? Action, string? Target, string? Text);
