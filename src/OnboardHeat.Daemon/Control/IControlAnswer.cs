namespace OnboardHeat.Daemon.Control;

/// <summary>What knows how to answer one kind of question.</summary>
internal interface IControlAnswer
{
    /// <summary>The answer, or null when the question is another one's.</summary>
    Task<ControlReply?> AnswerAsync(ControlRequest request, CancellationToken cancellationToken);
}
