namespace OnboardHeat.Core.Watch;

/// <summary>
/// One alarm with its subject: delays, latch, acknowledgement, shelving, service. Watchers tell it every scan whether
/// their condition holds; it answers when words are wanted, so that a quiet scan allocates nothing. What it does
/// follows the state model of ISA-18.2 / IEC 62682 (openly stated in OPC 10000-9): people act on what is shown, never
/// on the condition itself.
/// </summary>
internal sealed class AlarmPoint(AlarmDefinition definition, string subject)
{
    private double _pendingSinceS = double.NaN;
    private double _shelvedUntilS = double.NegativeInfinity;
    private bool _isAcknowledged = true;
    private bool _isRepaired = true;
    private bool _isOut;
    private bool _owesWords;

    public AlarmDefinition Definition { get; } = definition;

    public string Subject { get; } = subject;

    /// <summary>Whether the condition holds, after its delays.</summary>
    public bool IsPresent { get; private set; }

    /// <summary>
    /// Whether it was raised and has not returned to normal since: the condition, the latch or an owed acknowledgement
    /// holds it.
    /// </summary>
    public bool IsStanding { get; private set; }

    public double SinceS { get; private set; }

    public string Because { get; private set; } = "";

    public IReadOnlyList<string> WhatToDo { get; private set; } = [];

    /// <summary>Set when anything that a person sees has changed; the board takes it back.</summary>
    public bool HasChanged { get; set; }

    /// <summary>Raised (true) or cleared (false) in this scan; the board takes it back.</summary>
    public bool? Transition { get; set; }

    public AlarmState State { get; private set; }

    /// <summary>
    /// Takes the condition of this scan. True when words are wanted: it was raised just now, or stands since before a
    /// restart.
    /// </summary>
    public bool Observe(bool holds, double elapsedS) =>
        Observe(holds, elapsedS, Definition.OnDelayS, Definition.OffDelayS);

    /// <summary>The same with delays of its own, for a watcher that has already waited.</summary>
    public bool Observe(bool holds, double elapsedS, double onDelayS, double offDelayS)
    {
        if (_isOut)
        {
            return false;
        }

        if (holds == IsPresent)
        {
            _pendingSinceS = double.NaN;
        }
        else
        {
            if (double.IsNaN(_pendingSinceS))
            {
                _pendingSinceS = elapsedS;
            }

            if (elapsedS - _pendingSinceS >= (holds ? onDelayS : offDelayS))
            {
                Turn(holds, elapsedS);
            }
        }

        Settle(elapsedS);
        return holds && _owesWords;
    }

    /// <summary>Time passes for an alarm whose watcher did not speak in this scan (shelving runs out).</summary>
    public void Settle(double elapsedS)
    {
        var live = LiveState();
        IsStanding = live != AlarmState.Normal;
        var state = _isOut ? AlarmState.OutOfService : IsShelved(elapsedS) ? AlarmState.Shelved : live;
        if (state != State)
        {
            State = state;
            HasChanged = true;
        }
    }

    /// <summary>
    /// The sentence and the advice. May be said again while it stands, when the figures have moved on.
    /// </summary>
    public void Say(string because, IReadOnlyList<string> whatToDo)
    {
        Because = because;
        WhatToDo = whatToDo;
        HasChanged = true;
        _owesWords = false;
    }

    /// <summary>A person has seen it. What was not raised cannot be acknowledged in advance.</summary>
    public void Acknowledge(double elapsedS)
    {
        if (IsStanding)
        {
            HasChanged |= !_isAcknowledged;
            _isAcknowledged = true;
            Settle(elapsedS);
        }
    }

    /// <summary>Puts it aside for a span; a span of zero takes it back. Refused (false) for critical alarms.</summary>
    public bool Shelve(double elapsedS, double spanS)
    {
        if (Definition.Priority == AlarmPriority.Critical)
        {
            return false;
        }

        _shelvedUntilS = spanS > 0 ? elapsedS + spanS : double.NegativeInfinity;
        Settle(elapsedS);
        return true;
    }

    /// <summary>A person says that what was broken is mended. Only a loss of coolant waits for it.</summary>
    public void Repair(double elapsedS)
    {
        _isRepaired = true;
        Settle(elapsedS);
    }

    /// <summary>
    /// Takes it out of service, or back: back, its condition is judged anew, but what a person still owes stays owed.
    /// </summary>
    public void SetOutOfService(bool isOut, double elapsedS)
    {
        if (_isOut == isOut)
        {
            return;
        }

        _isOut = isOut;
        _pendingSinceS = double.NaN;
        if (isOut && IsPresent)
        {
            // Nobody judges it any more, so nobody can say that it holds. A loss stays latched: it is what the works
            // are for.
            Turn(false, elapsedS);
        }

        Settle(elapsedS);
    }

    public AlarmSnapshot Snapshot() =>
        new(Definition, Subject, State, IsPresent, SinceS, Because, WhatToDo) { IsAcknowledged = _isAcknowledged };

    /// <summary>Whether there is anything to keep over a restart.</summary>
    public bool IsWorthKeeping(double elapsedS) => IsStanding || IsShelved(elapsedS);

    /// <summary>What is kept. The state is the one beneath shelving and works: those are kept beside it.</summary>
    public KeptAlarm Keep(double elapsedS) => new(
        Definition.Name, Subject, LiveState(), IsPresent, _isRepaired, _isAcknowledged, Math.Max(0, elapsedS - SinceS),
        Math.Max(0, _shelvedUntilS - elapsedS), Because);

    /// <summary>
    /// Goes on from what was kept. A condition that held is raised again at the first scan, so that nobody who listens
    /// from then on misses it; it is cleared by judging only, and its words are wanted anew when it is seen to hold.
    /// </summary>
    public void Restore(KeptAlarm kept)
    {
        IsStanding = kept.WasPresent || kept.State is AlarmState.Unacknowledged or AlarmState.Acknowledged
            or AlarmState.ReturnedUnacknowledged or AlarmState.Latched;
        _isAcknowledged = kept.IsAcknowledged || !IsStanding;
        _isRepaired = kept.IsRepaired || !IsStanding;
        _shelvedUntilS = Definition.Priority != AlarmPriority.Critical && kept.ShelvedLeftS > 0
            ? Math.Min(kept.ShelvedLeftS, AlarmBoard.ShelveMostS)
            : double.NegativeInfinity;
        SinceS = double.IsFinite(kept.AgeS) ? -Math.Max(0, kept.AgeS) : 0;
        Because = kept.Because;
        IsPresent = kept.WasPresent;
        Transition = kept.WasPresent ? true : null;
        _owesWords = kept.WasPresent;
        HasChanged = true;
        Settle(0);
    }

    private bool IsShelved(double elapsedS) => elapsedS < _shelvedUntilS;

    private void Turn(bool holds, double elapsedS)
    {
        IsPresent = holds;
        _pendingSinceS = double.NaN;
        Transition = holds;
        HasChanged = true;
        _owesWords = holds;
        if (holds)
        {
            SinceS = elapsedS;
            IsStanding = true;
            _isAcknowledged = false;
            _isRepaired = false;
        }
    }

    private AlarmState LiveState() => (IsStanding, IsPresent, _isAcknowledged) switch
    {
        (false, _, _) => AlarmState.Normal,
        (_, true, false) => AlarmState.Unacknowledged,
        (_, true, true) => AlarmState.Acknowledged,
        (_, false, false) => Definition.IsLatched ? AlarmState.Latched : AlarmState.ReturnedUnacknowledged,
        _ => Definition.Kind == AlarmKind.CoolantLoss && !_isRepaired ? AlarmState.Latched : AlarmState.Normal,
    };
}
