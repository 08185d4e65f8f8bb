using System.Device.Gpio;

namespace OnboardHeat.Probes.Contacts;

/// <summary>
/// One contact on its GPIO line: looks after each edge, again when the bounce must be over, and at every scan in case
/// an edge was missed.
/// </summary>
internal sealed class ContactLine : IDisposable
{
    private readonly Lock _gate = new();
    private readonly SteadyLevel _level = new();
    private readonly ContactFitting _fitting;
    private readonly GpioController _controller;
    private readonly Action _onChange;
    private readonly TimeProvider _time;
    private readonly long _began;
    private readonly ITimer _settled;
    private bool _isOpen;
    private bool _isDisposed;

    public ContactLine(ContactFitting fitting, GpioController controller, Action onChange, TimeProvider time)
    {
        _fitting = fitting;
        _controller = controller;
        _onChange = onChange;
        _time = time;
        _began = time.GetTimestamp();
        _settled = time.CreateTimer(
            static line => ((ContactLine)line!).Look(), this, Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
    }

    /// <summary>The contact's state, 1 as true; null while the line cannot be had.</summary>
    public bool? Read()
    {
        Look();
        lock (_gate)
        {
            return _level.Level is { } level ? level != _fitting.IsActiveLow : null;
        }
    }

    public void Dispose()
    {
        lock (_gate)
        {
            _isDisposed = true;
        }

        _settled.Dispose();
    }

    private void Look()
    {
        var hasChanged = false;
        lock (_gate)
        {
            if (_isDisposed)
            {
                return;
            }

            try
            {
                Open();
                hasChanged = _level.Observe(
                    _controller.Read(_fitting.Pin) == PinValue.High, _time.GetElapsedTime(_began));
            }
            catch (Exception fault) when (IsOfTheLine(fault))
            {
                // Taken by somebody else, no rights, no such line: the signal is unknown, and the next scan tries
                // again.
                _level.Forget();
            }

            if (_level.IsPending)
            {
                _settled.Change(SteadyLevel.StandsFor, Timeout.InfiniteTimeSpan);
            }
        }

        if (hasChanged)
        {
            _onChange();
        }
    }

    private void Open()
    {
        if (_isOpen)
        {
            return;
        }

        // An active-low contact switches to ground and needs something to pull the line up; the board's own resistor
        // will do.
        var wanted = _fitting.IsActiveLow ? PinMode.InputPullUp : PinMode.Input;
        var mode = _controller.IsPinModeSupported(_fitting.Pin, wanted) ? wanted : PinMode.Input;
        if (!_controller.IsPinOpen(_fitting.Pin))
        {
            _controller.OpenPin(_fitting.Pin, mode);
        }

        _controller.RegisterCallbackForPinValueChangedEvent(
            _fitting.Pin, PinEventTypes.Rising | PinEventTypes.Falling, OnEdge);
        _isOpen = true;
    }

    private void OnEdge(object sender, PinValueChangedEventArgs edge)
    {
        lock (_gate)
        {
            _level.Bounce();
        }

        Look();
    }

    private static bool IsOfTheLine(Exception fault) =>
        fault is IOException or UnauthorizedAccessException
            or InvalidOperationException or ArgumentException or NotSupportedException;
}
