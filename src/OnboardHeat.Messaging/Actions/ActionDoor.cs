using System.Text.Json;
using OnboardHeat.Core;
using OnboardHeat.Core.Scans;
using OnboardHeat.Engine.Actions;
using OnboardHeat.Engine.Ports;
using OnboardHeat.Messaging.Topics;

namespace OnboardHeat.Messaging.Actions;

/// <summary>
/// Judges what people ask for over the broker. A question is acted on once, and only while it is fresh: an
/// acknowledgement that waited an hour in a phone would silence an alarm that nobody has seen.
/// </summary>
internal sealed class ActionDoor(TopicTree topics, Moments moments, IActionInbox inbox, TimeProvider time)
{
    /// <summary>A question is a few words; a longer one is somebody's mistake.</summary>
    public const int MaxPayloadBytes = 4096;

    /// <summary>Longest word and longest text, so that the record and the pages are never flooded.</summary>
    public const int MaxWordLength = 64;
    public const int MaxTextLength = 500;

    // Ids are kept as long as their moment could still pass; more than a person can ask in that time is a flood.
    private const int MaxIds = 256;

    private Picture? _newest;
    private readonly Dictionary<string, long> _ids = [];

    /// <summary>
    /// Judges a question and passes on what is in order. The answer, or null where nobody waits for one.
    /// </summary>
    public (AnswerForm Answer, OutgoingMessage? Message) Take(Question question, Picture? newest = null)
    {
        _newest = newest;
        var (id, problem) = Judge(question);
        var answer = new AnswerForm
        {
            Id = id,
            Result = problem is null ? AnswerForm.Taken : AnswerForm.Refused,
            Why = problem ?? "",
            Moment = moments.Now(),
        };
        return (answer, MessageOf(question, answer));
    }

    private (string Id, string? Problem) Judge(Question question)
    {
        if (topics.ActionOf(question.Topic) is not { } kind)
        {
            return ("", "no such action");
        }

        if (Parse(question.Payload) is not { } form || form.Id is not { Length: > 0 and <= MaxWordLength } id)
        {
            return ("", $"not a JSON object with an id of 1 to {MaxWordLength} characters, moment, target, text and "
                + $"nothing else");
        }

        return (id, ProblemOf(question, form, id) ?? Pass(kind, id, form.Target ?? "", form.Text ?? ""));
    }

    private string? ProblemOf(Question question, ActionForm form, string id)
    {
        if (question.IsRetained)
        {
            return "retained: an action is never acted on when the broker had kept it";
        }

        if ((form.Target?.Length ?? 0) > 2 * MaxWordLength || (form.Text?.Length ?? 0) > MaxTextLength)
        {
            return $"target longer than {2 * MaxWordLength} or text longer than {MaxTextLength} characters";
        }

        if (form.Moment is not { Length: <= MaxWordLength } moment || moments.AgeOf(moment) is not { } age)
        {
            return "moment missing or not of this run: quote the newest one";
        }

        if (age > Moments.Limit)
        {
            return "older than 30 s: quote the newest moment";
        }

        return IsRepeated(id) ? "repeated: this id was acted on already" : null;
    }

    private string? Pass(ActionKind kind, string id, string target, string text)
    {
        var action = new PersonAction(kind, target, text);
        if ((ActionCheck.ProblemOf(action) ?? ActionCheck.IdleBecause(action, _newest)) is { } problem)
        {
            return problem;
        }

        if (_ids.Count >= MaxIds || !inbox.Offer(action))
        {
            return "too many actions at once";
        }

        _ids.Add(id, time.GetTimestamp());
        return null;
    }

    private bool IsRepeated(string id)
    {
        foreach (var (old, at) in _ids)
        {
            // A moment may be quoted for 30 s after it was said, so an id is unsafe to forget before that.
            if (time.GetElapsedTime(at) > Moments.Limit)
            {
                _ids.Remove(old);
            }
        }

        return _ids.ContainsKey(id);
    }

    private static ActionForm? Parse(ReadOnlyMemory<byte> payload)
    {
        if (payload.Length > MaxPayloadBytes)
        {
            return null;
        }

        try
        {
            return JsonSerializer.Deserialize(payload.Span, MessageJsonContext.Default.ActionForm);
        }
        catch (JsonException)
        {
            return null;
        }
    }

    // An answer goes to the asker's topic as it stands. Our own topics and filters are no place for it: a question must
    // not be able to make the daemon write over its own picture.
    private OutgoingMessage? MessageOf(Question question, AnswerForm answer)
    {
        if (question.ResponseTopic is not { Length: > 0 and <= 256 } topic || topic.AsSpan().IndexOfAny("+#\0") >= 0
            || topic.StartsWith(topics.Root, StringComparison.Ordinal) || topic.StartsWith('$'))
        {
            return null;
        }

        return new OutgoingMessage
        {
            Topic = topic,
            Payload = JsonSerializer.SerializeToUtf8Bytes(answer, MessageJsonContext.Default.AnswerForm),
            ContentType = OutgoingMessage.Json,
            IsRetained = false,
            IsAcknowledged = true,
            Expiry = Moments.Limit,
            CorrelationData = question.CorrelationData,
        };
    }
}
