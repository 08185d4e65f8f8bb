using System.Device.Gpio;
using System.Threading.Channels;
using Microsoft.Extensions.Logging;

namespace OnboardHeat.Outputs.Pins;

/// <summary>
/// The button, to ground with the pull-up of the processor: low is pressed. Edges wake the worker; the level is read
/// then.
/// </summary>
internal sealed class ButtonPin(
    int pin, Func<GpioController> open, ChannelWriter<bool> wake, TimeProvider time, ILogger log) : IDisposable
{
    private readonly Retry _retry = new("button", time, log);
    private GpioController? _controller;

    /// <summary>How long until a failed line may be tried again; null when it works.</summary>
    public TimeSpan? RetryIn => _controller is null ? _retry.Left : null;

    /// <summary>Whether it is pressed; a line that is not to be had is not.</summary>
    public bool IsDown()
    {
        if (!_retry.IsDue)
        {
            return false;
        }

        try
        {
            if (_controller is null)
            {
                _controller = open();
                _controller.OpenPin(pin, PinMode.InputPullUp);
                _controller.RegisterCallbackForPinValueChangedEvent(
                    pin, PinEventTypes.Rising | PinEventTypes.Falling, OnEdge);
                _retry.Worked();
            }

            return _controller.Read(pin) == PinValue.Low;
        }
        catch (Exception e) when (e is not OutOfMemoryException)
        {
            Dispose();
            _retry.Failed(e);
            return false;
        }
    }

    public void Dispose()
    {
        try
        {
            _controller?.Dispose();
        }
        catch (Exception e) when (e is not OutOfMemoryException)
        {
            log.OutputGone("button", $"closing: {e.Message}");
        }

        _controller = null;
    }

    private void OnEdge(object sender, PinValueChangedEventArgs e) => wake.TryWrite(true);
}
