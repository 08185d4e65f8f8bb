namespace OnboardHeat.Messaging.Actions;

/// <summary>A message that came in on an action's topic.</summary>
/// <param name="Topic">Its topic.</param>
/// <param name="Payload">Its payload; bounded before it gets here.</param>
/// <param name="IsRetained">Whether the broker had kept it: then it is old, whoever sent it.</param>
/// <param name="ResponseTopic">Where the asker waits for the answer; null if nowhere.</param>
/// <param name="CorrelationData">What the answer has to carry; null for none.</param>
internal sealed record Question(
    string Topic, ReadOnlyMemory<byte> Payload, bool IsRetained, string? ResponseTopic, byte[]? CorrelationData);
