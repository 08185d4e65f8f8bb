using System.Collections.Concurrent;
using System.Device.Gpio;

namespace OnboardHeat.Adapters.Tests.Outputs;

/// <summary>
/// Pins of a computer that is not there. The real GpioController works over it; a test breaks it at will.
/// </summary>
internal sealed class FakeBoard
{
    private readonly ConcurrentDictionary<int, PinValue> _levels = new();
    private readonly ConcurrentDictionary<int, PinChangeEventHandler> _callbacks = new();

    /// <summary>Pins that nobody can have.</summary>
    public HashSet<int> Taken { get; } = [];

    /// <summary>Pins that read low whatever is written.</summary>
    public HashSet<int> Shorted { get; } = [];

    /// <summary>Every level that was written, in order.</summary>
    public ConcurrentQueue<(int Pin, bool Level)> Written { get; } = [];

    public int Opened { get; private set; }

    public bool Level(int pin) => _levels.TryGetValue(pin, out var level) && level == PinValue.High;

    public GpioController Open() => new(new Driver(this));

    /// <summary>Somebody moves an input, with or without the edge being told.</summary>
    public void Drive(int pin, bool level)
    {
        _levels[pin] = level ? PinValue.High : PinValue.Low;
        if (_callbacks.TryGetValue(pin, out var callback))
        {
            callback(this, new PinValueChangedEventArgs(level ? PinEventTypes.Rising : PinEventTypes.Falling, pin));
        }
    }

    private sealed class Driver(FakeBoard board) : GpioDriver
    {
        protected override int PinCount => 28;

        protected override void OpenPin(int pinNumber)
        {
            board.Opened++;
            if (board.Taken.Contains(pinNumber))
            {
                throw new IOException($"pin {pinNumber} is in use by another");
            }
        }

        protected override void ClosePin(int pinNumber) => board._callbacks.TryRemove(pinNumber, out _);

        protected override void SetPinMode(int pinNumber, PinMode mode)
        {
            if (mode == PinMode.InputPullUp)
            {
                board._levels.TryAdd(pinNumber, PinValue.High);
            }
        }

        protected override PinMode GetPinMode(int pinNumber) => PinMode.Output;

        protected override bool IsPinModeSupported(int pinNumber, PinMode mode) => true;

        protected override PinValue Read(int pinNumber) =>
            board.Shorted.Contains(pinNumber) ? PinValue.Low : board._levels.GetValueOrDefault(pinNumber, PinValue.Low);

        protected override void Write(int pinNumber, PinValue value)
        {
            if (board.Taken.Contains(pinNumber))
            {
                throw new IOException($"pin {pinNumber} is in use by another");
            }

            board._levels[pinNumber] = value;
            board.Written.Enqueue((pinNumber, value == PinValue.High));
        }

        protected override WaitForEventResult WaitForEvent(
            int pinNumber, PinEventTypes eventTypes, CancellationToken cancellationToken) =>
            throw new NotSupportedException();

        protected override void AddCallbackForPinValueChangedEvent(
            int pinNumber, PinEventTypes eventTypes, PinChangeEventHandler callback) =>
            board._callbacks[pinNumber] = callback;

        protected override void RemoveCallbackForPinValueChangedEvent(int pinNumber, PinChangeEventHandler callback) =>
            board._callbacks.TryRemove(pinNumber, out _);
    }
}
