namespace OnboardHeat.Messaging.Topics;

/// <summary>One message on its way to the broker.</summary>
internal sealed record OutgoingMessage
{
    public const string PlainText = "text/plain; charset=utf-8";

    public const string Json = "application/json";

    public required string Topic { get; init; }

    /// <summary>UTF-8 always: the payload format indicator says so.</summary>
    public required ReadOnlyMemory<byte> Payload { get; init; }

    public string ContentType { get; init; } = PlainText;

    public bool IsRetained { get; init; } = true;

    /// <summary>Whether the broker has to acknowledge it (quality of service 1) before the next one goes out.</summary>
    public bool IsAcknowledged { get; init; }

    /// <summary>After how long the broker forgets it; null: never.</summary>
    public TimeSpan? Expiry { get; init; }

    /// <summary>What ties an answer to its question; null for anything else.</summary>
    public byte[]? CorrelationData { get; init; }
}
