using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Json;
using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Watch;
using OnboardHeat.Engine;
using OnboardHeat.Engine.Pictures;

namespace OnboardHeat.Messaging.Topics;

/// <summary>
/// Decides what the broker has to be told after a turn. It holds what was said last on each topic and nothing else, so
/// its memory is bounded by the number of topics however long the broker is away; after a reconnection everything is
/// said anew.
/// </summary>
internal sealed class Announcer(TopicTree topics, PictureJson pictures, FittedSet fitted)
{
    private readonly ImmutableArray<Figure> _figures = PlainValues.FiguresFor(fitted);
    private readonly Dictionary<string, SaidValue> _said = [];
    private readonly Dictionary<string, SaidAlarm> _saidAlarms = [];
    private int _alarmChanges;
    private PictureKey _lastKey;
    private TimeSpan? _pictureAt;

    /// <summary>
    /// The broker may have forgotten all: everything is due again. Alarms said before are remembered, to be taken back
    /// if gone.
    /// </summary>
    public void StartAnew()
    {
        _said.Clear();
        _pictureAt = null;
        foreach (var alarm in _saidAlarms.Values)
        {
            alarm.At = null;
        }
    }

    /// <summary>Messages due after this turn, most urgent first: alarms, the picture, plain values.</summary>
    public IReadOnlyList<OutgoingMessage> After(Turn turn, TimeSpan now)
    {
        var due = new List<OutgoingMessage>();
        AddAlarms(due, turn, now);
        AddPicture(due, turn, now);
        foreach (var word in PlainValues.Words)
        {
            AddPlain(due, word.Name, word.Of(turn), now);
        }

        foreach (var figure in _figures)
        {
            AddFigure(due, figure, figure.Of(turn), now);
        }

        return due;
    }

    private void AddAlarms(List<OutgoingMessage> due, Turn turn, TimeSpan now)
    {
        foreach (var alarm in turn.Picture.Alarms)
        {
            if (!_saidAlarms.TryGetValue(alarm.Path, out var said))
            {
                _saidAlarms.Add(alarm.Path, said = new SaidAlarm(alarm));
                _alarmChanges++;
            }

            var hasMoved = said.HasMoved(alarm);
            _alarmChanges += hasMoved ? 1 : 0;
            if (said.At is not { } at || hasMoved
                || now - at >= (said.HasSameWords(alarm) ? Announcing.AlarmPeriod : Announcing.WordsPeriod))
            {
                said.Alarm = alarm;
                said.At = now;
                due.Add(MessageOf(turn, alarm));
            }
        }

        AddCleared(due, turn);
    }

    // An alarm that is normal again is said once more, as normal and retained, and the broker then forgets it: whoever
    // looks within the half hour learns that it is over, whoever looks later finds nothing. An empty message would tell
    // a listener nothing.
    private void AddCleared(List<OutgoingMessage> due, Turn turn)
    {
        foreach (var (path, said) in _saidAlarms)
        {
            if (!turn.Picture.Alarms.Any(alarm => alarm.Path == path))
            {
                due.Add(MessageOf(
                    turn, said.Alarm with { State = AlarmState.Normal, IsPresent = false, IsAcknowledged = true }));
                _saidAlarms.Remove(path);
                _alarmChanges++;
            }
        }
    }

    private OutgoingMessage MessageOf(Turn turn, AlarmSnapshot alarm)
    {
        var form = PictureJson.FormOf(alarm);
        var message = new AlarmMessageForm
        {
            Run = turn.Picture.Run,
            ElapsedS = Math.Round(turn.Picture.Elapsed.TotalSeconds, 3),
            Time = PictureJson.TimeOf(turn.Picture.Utc),
            Alarm = form.Alarm,
            Subject = form.Subject,
            State = form.State,
            Present = form.Present,
            Acknowledged = form.Acknowledged,
            Priority = form.Priority,
            SinceS = form.SinceS,
            Because = form.Because,
            WhatToDo = form.WhatToDo,
        };
        return new OutgoingMessage
        {
            Topic = topics.Alarm(alarm.Definition.Name, alarm.Subject),
            Payload = JsonSerializer.SerializeToUtf8Bytes(message, MessageJsonContext.Default.AlarmMessageForm),
            ContentType = OutgoingMessage.Json,
            IsAcknowledged = true,
            Expiry = Announcing.AlarmPeriod * Announcing.PeriodsToExpiry,
        };
    }

    private void AddPicture(List<OutgoingMessage> due, Turn turn, TimeSpan now)
    {
        var key = PictureKey.Of(turn.Picture, _alarmChanges);
        if (_pictureAt is { } at && key == _lastKey && now - at < Announcing.PicturePeriod)
        {
            return;
        }

        _lastKey = key;
        _pictureAt = now;
        due.Add(new OutgoingMessage
        {
            Topic = topics.Picture,
            Payload = pictures.Write(turn),
            ContentType = OutgoingMessage.Json,
            IsAcknowledged = true,
            // Parked, scans come up to a minute apart, so a picture lives as long as a value does.
            Expiry = Announcing.ValuePeriod * Announcing.PeriodsToExpiry,
        });
    }

    private void AddFigure(List<OutgoingMessage> due, Figure figure, double? value, TimeSpan now)
    {
        if (value is not { } number || !double.IsFinite(number))
        {
            AddPlain(due, figure.Name, PlainValues.Unknown, now);
        }
        else if (!_said.TryGetValue(figure.Name, out var said) || double.IsNaN(said.Number)
            || Math.Abs(number - said.Number) >= figure.Deadband || now - said.At >= Announcing.ValuePeriod)
        {
            var text = Math.Round(number, figure.Decimals)
                .ToString($"F{figure.Decimals}", CultureInfo.InvariantCulture);
            Say(due, figure.Name, new SaidValue(text, number, now));
        }
    }

    private void AddPlain(List<OutgoingMessage> due, string name, string text, TimeSpan now)
    {
        if (!_said.TryGetValue(name, out var said) || said.Text != text || now - said.At >= Announcing.ValuePeriod)
        {
            Say(due, name, new SaidValue(text, double.NaN, now));
        }
    }

    private void Say(List<OutgoingMessage> due, string name, SaidValue said)
    {
        _said[name] = said;
        due.Add(new OutgoingMessage
        {
            Topic = topics.Value(name),
            Payload = Encoding.UTF8.GetBytes(said.Text),
            Expiry = Announcing.ValuePeriod * Announcing.PeriodsToExpiry,
        });
    }

    private readonly record struct SaidValue(string Text, double Number, TimeSpan At);

    private sealed class SaidAlarm(AlarmSnapshot alarm)
    {
        public AlarmSnapshot Alarm { get; set; } = alarm;

        public TimeSpan? At { get; set; }

        public bool HasMoved(AlarmSnapshot other) =>
            Alarm.State != other.State || Alarm.IsPresent != other.IsPresent
                || Alarm.IsAcknowledged != other.IsAcknowledged
            || Alarm.SinceS != other.SinceS;

        public bool HasSameWords(AlarmSnapshot other) =>
            Alarm.Because == other.Because
            && (ReferenceEquals(Alarm.WhatToDo, other.WhatToDo) || Alarm.WhatToDo.SequenceEqual(other.WhatToDo));
    }
}
