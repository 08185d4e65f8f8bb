using Microsoft.Extensions.Logging;
using OnboardHeat.Engine;
using OnboardHeat.Messaging.Actions;
using OnboardHeat.Messaging.Record;
using OnboardHeat.Messaging.Topics;

namespace OnboardHeat.Messaging.Supervision;

/// <summary>What one session after the other works with.</summary>
internal sealed record SessionParts
{
    public required TopicTree Topics { get; init; }

    public required Announcer Announcer { get; init; }

    public required TurnQueue Turns { get; init; }

    /// <summary>Judges what is asked for; null: actions are not accepted.</summary>
    public required ActionDoor? Door { get; init; }

    public required Moments Moments { get; init; }

    /// <summary>Hands the record on; null: no record, or a broker that ends with the daemon.</summary>
    public required RecordForwarder? Forwarder { get; init; }

    /// <summary>Without a turn for so long nobody judges, and <c>alive</c> says no.</summary>
    public required TimeSpan SilenceLimit { get; init; }

    public required TimeProvider Time { get; init; }

    public required ILogger Log { get; init; }
}
