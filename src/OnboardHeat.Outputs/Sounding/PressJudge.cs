namespace OnboardHeat.Outputs.Sounding;

/// <summary>
/// Makes presses out of a bouncing contact. A level counts once it has stood for 40 ms; a press that ends is short, one
/// that stands for three seconds is long at that moment, and one that stands for a minute is a stuck button: said once,
/// and heard again after its release.
/// </summary>
internal sealed class PressJudge
{
    /// <summary>Contacts bounce for some milliseconds, worn ones for twenty (common practice, no source).</summary>
    public static readonly TimeSpan Debounce = TimeSpan.FromMilliseconds(40);

    /// <summary>Longer than anybody leans on a button by accident while acknowledging.</summary>
    public static readonly TimeSpan LongAfter = TimeSpan.FromSeconds(3);

    public static readonly TimeSpan StuckAfter = TimeSpan.FromMinutes(1);

    private bool _raw;
    private bool _isPressed;
    private bool _hasSpoken;
    private TimeSpan _rawSince;
    private TimeSpan _pressedSince;
    private bool _isStuck;

    /// <summary>
    /// Takes the level now (true: pressed). Called at each edge and when <see cref="NextLook"/> says.
    /// </summary>
    public Press Observe(bool isDown, TimeSpan now)
    {
        if (isDown != _raw)
        {
            _raw = isDown;
            _rawSince = now;
        }

        if (_raw != _isPressed && now - _rawSince >= Debounce)
        {
            return Turn();
        }

        if (!_isPressed)
        {
            return Press.None;
        }

        if (!_isStuck && now - _pressedSince >= StuckAfter)
        {
            _isStuck = true;
            return Press.Stuck;
        }

        if (!_hasSpoken && now - _pressedSince >= LongAfter)
        {
            _hasSpoken = true;
            return Press.Long;
        }

        return Press.None;
    }

    /// <summary>How long until time alone changes the answer; null: only an edge does.</summary>
    public TimeSpan? NextLook(TimeSpan now)
    {
        if (_raw != _isPressed)
        {
            return Debounce - (now - _rawSince);
        }

        return !_isPressed || _isStuck ? null : (_hasSpoken ? StuckAfter : LongAfter) - (now - _pressedSince);
    }

    private Press Turn()
    {
        _isPressed = _raw;
        if (_isPressed)
        {
            _pressedSince = _rawSince;
            _hasSpoken = false;
            _isStuck = false;
            return Press.None;
        }

        return _hasSpoken ? Press.None : Press.Short;
    }
}
