namespace OnboardHeat.Messaging.Actions;

/// <summary>What a person asks for, as it comes in.</summary>
/// <param name="Id">The asker's own word for this question, 1 to 64 characters; the same id is acted on once.</param>
/// <param name="Moment">The newest <c>moment</c> that the asker has seen: it proves how old the question is.</param>
/// <param name="Target">What it concerns, as the action has it; may be left out.</param>
/// <param name="Text">Words of a note or a change mark, minutes of shelving; may be left out.</param>
internal sealed record ActionForm(string? Id, string? Moment, string? Target, string? Text);
