namespace OnboardHeat.Core.Watch;

/// <summary>
/// One alarm with its subject: delays, latch, acknowledgement, shelving, service. Watchers tell it every scan whether their condition
/// holds; it answers when words are wanted, so that a quiet scan allocates nothing.
/// </summary>
internal sealed class AlarmPoint(AlarmDefinition definition, string subject)
{
    private double _pendingSinceS = double.NaN;
    private double _shelvedUntilS = double.NegativeInfinity;
    private bool _isAcknowledged = true;
    private bool _isRepaired = true;
    private bool _wasRaised;
    private bool _isOut;

    public AlarmDefinition Definition { get; } = definition;

    public string Subject { get; } = subject;

    /// <summary>Whether the condition holds, after its delays.</summary>
    public bool IsPresent { get; private set; }

    public double SinceS { get; private set; }

    public string Because { get; private set; } = "";

    public IReadOnlyList<string> WhatToDo { get; private set; } = [];

    /// <summary>Set when anything that a person sees has changed; the board takes it back.</summary>
    public bool HasChanged { get; set; }

    /// <summary>Raised (true) or cleared (false) in this scan; the board takes it back.</summary>
    public bool? Transition { get; set; }

    public AlarmState State { get; private set; }

    /// <summary>Takes the condition of this scan. True when it was raised just now: the caller owes the words.</summary>
    public bool Observe(bool holds, double elapsedS) => Observe(holds, elapsedS, Definition.OnDelayS, Definition.OffDelayS);

    /// <summary>The same with delays of its own, for a watcher that has already waited.</summary>
    public bool Observe(bool holds, double elapsedS, double onDelayS, double offDelayS)
    {
        if (_isOut)
        {
            return false;
        }

        var raised = false;
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
                raised = holds;
                Turn(holds, elapsedS);
            }
        }

        Settle(elapsedS);
        return raised;
    }

    /// <summary>Time passes for an alarm whose watcher did not speak in this scan (shelving runs out).</summary>
    public void Settle(double elapsedS)
    {
        var state = StateAt(elapsedS);
        if (state != State)
        {
            State = state;
            HasChanged = true;
        }
    }

    /// <summary>The sentence and the advice. May be said again while it stands, when the figures have moved on.</summary>
    public void Say(string because, IReadOnlyList<string> whatToDo)
    {
        Because = because;
        WhatToDo = whatToDo;
        HasChanged = true;
    }

    public void Acknowledge(double elapsedS)
    {
        if (_wasRaised)
        {
            _isAcknowledged = true;
            Settle(elapsedS);
        }
    }

    /// <summary>Puts it aside. Refused (false) for critical alarms.</summary>
    public bool Shelve(double elapsedS, double spanS)
    {
        if (Definition.Priority == AlarmPriority.Critical)
        {
            return false;
        }

        _shelvedUntilS = elapsedS + spanS;
        Settle(elapsedS);
        return true;
    }

    public void Repair(double elapsedS)
    {
        _isRepaired = true;
        Settle(elapsedS);
    }

    /// <summary>Takes it out of service, or back: back, it starts from normal and is judged anew.</summary>
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
            Turn(false, elapsedS);
            // A loss that was open when works began is what the works are for; it stays to be acknowledged and repaired.
        }

        Settle(elapsedS);
    }

    public AlarmSnapshot Snapshot() => new(Definition, Subject, State, IsPresent, SinceS, Because, WhatToDo);

    public KeptAlarm Keep(double elapsedS) => new(
        Definition.Name, Subject, State, IsPresent, _isRepaired, _isAcknowledged, Math.Max(0, elapsedS - SinceS),
        Math.Max(0, _shelvedUntilS - elapsedS), Because);

    /// <summary>Goes on from what was kept: a condition that held is raised again at once, and cleared only by judging.</summary>
    public void Restore(KeptAlarm kept)
    {
        _wasRaised = kept.State is not (AlarmState.Normal or AlarmState.OutOfService) || kept.WasPresent;
        _isAcknowledged = kept.IsAcknowledged;
        _isRepaired = kept.IsRepaired;
        _shelvedUntilS = kept.ShelvedLeftS > 0 ? kept.ShelvedLeftS : double.NegativeInfinity;
        SinceS = -kept.AgeS;
        Because = kept.Because;
        IsPresent = kept.WasPresent;
        Transition = kept.WasPresent ? true : null;
        Settle(0);
    }

    private void Turn(bool holds, double elapsedS)
    {
        IsPresent = holds;
        _pendingSinceS = double.NaN;
        Transition = holds;
        HasChanged = true;
        if (holds)
        {
            SinceS = elapsedS;
            _wasRaised = true;
            _isAcknowledged = false;
            _isRepaired = false;
        }
    }

    private AlarmState StateAt(double elapsedS)
    {
        if (_isOut)
        {
            return AlarmState.OutOfService;
        }

        if (elapsedS < _shelvedUntilS)
        {
            return AlarmState.Shelved;
        }

        if (!_wasRaised)
        {
            return AlarmState.Normal;
        }

        if (IsPresent)
        {
            return _isAcknowledged ? AlarmState.Acknowledged : AlarmState.Unacknowledged;
        }

        if (!_isAcknowledged)
        {
            return Definition.IsLatched ? AlarmState.Latched : AlarmState.ReturnedUnacknowledged;
        }

        if (Definition.Kind == AlarmKind.CoolantLoss && !_isRepaired)
        {
            return AlarmState.Latched;
        }

        _wasRaised = false;
        return AlarmState.Normal;
    }
}
