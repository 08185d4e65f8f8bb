using System.Device.Gpio;
using Microsoft.Extensions.Logging;

namespace OnboardHeat.Outputs.Pins;

/// <summary>
/// One line that is driven. Opened when first used and again after a failure; whatever a driver throws stays here,
/// because a buzzer that is not to be had must cost nobody else anything.
/// </summary>
internal sealed class OutputPin(
    string name, int pin, Func<GpioController> open, TimeProvider time, ILogger log) : IDisposable
{
    private readonly Retry _retry = new(name, time, log);
    private GpioController? _controller;
    private bool? _level;

    /// <summary>Why it does not work; null while it does, or has not been tried.</summary>
    public string? Trouble => _retry.Reason;

    /// <summary>How long until a failed line may be tried again; null when it works.</summary>
    public TimeSpan? RetryIn => _controller is null && !_retry.IsDue ? _retry.Left : null;

    /// <summary>Drives the line, unless it has that level already or has failed a moment ago.</summary>
    public void Set(bool level)
    {
        if (level == _level || !_retry.IsDue)
        {
            return;
        }

        try
        {
            if (_controller is null)
            {
                _controller = open();
                _controller.OpenPin(pin, PinMode.Output, level ? PinValue.High : PinValue.Low);
            }
            else
            {
                _controller.Write(pin, level ? PinValue.High : PinValue.Low);
            }

            _level = level;
            _retry.Worked();
        }
        catch (Exception e) when (e is not OutOfMemoryException)
        {
            Close();
            _retry.Failed(e);
        }
    }

    /// <summary>
    /// Drives it both ways and reads it back, shorter than a buzzer needs to be heard. What is wrong; null for nothing.
    /// </summary>
    public string? Prove()
    {
        foreach (var level in (ReadOnlySpan<bool>)[true, false])
        {
            _level = null;
            Set(level);
            if (_controller is null)
            {
                return $"{name}: {_retry.Reason ?? "waits to be tried again"}";
            }

            if (ReadsOtherThan(level))
            {
                return $"{name}: pin {pin} does not follow";
            }
        }

        return null;
    }

    /// <summary>
    /// Whether the line shows another level than it is driven to; a line that is not open shows none.
    /// </summary>
    public bool ReadsOtherThan(bool level)
    {
        try
        {
            return _controller is { } open && open.Read(pin) != (level ? PinValue.High : PinValue.Low);
        }
        catch (Exception e) when (e is not OutOfMemoryException)
        {
            return true;
        }
    }

    public void Dispose()
    {
        Set(false);
        Close();
    }

    private void Close()
    {
        _level = null;
        try
        {
            _controller?.Dispose();
        }
        catch (Exception e) when (e is not OutOfMemoryException)
        {
            log.OutputGone(name, $"closing: {e.Message}");
        }

        _controller = null;
    }
}
