using System.Device.Gpio;
using Microsoft.Extensions.Logging;
using OnboardHeat.Engine.Ports;

namespace OnboardHeat.Outputs.Pins;

/// <summary>
/// The heartbeat line: changes its level with each beat, so that a circuit outside sees edges and never a level that
/// could stand.
/// </summary>
public sealed class HeartbeatPin : IHeartbeat, IDisposable
{
    private readonly OutputPin _pin;
    private readonly int _number;
    private volatile bool _follows = true;
    private bool _level;

    /// <summary>A heartbeat on a pin; <paramref name="open"/> gives a controller of its own.</summary>
    public HeartbeatPin(int pin, Func<GpioController> open, TimeProvider time, ILogger log)
    {
        _number = pin;
        _pin = new OutputPin("heartbeat", pin, open, time, log);
    }

    /// <summary>Why the line does not work; null while it does.</summary>
    public string? Trouble => _pin.Trouble ?? (_follows ? null : $"pin {_number} does not follow");

    /// <inheritdoc/>
    public void Beat()
    {
        _level = !_level;
        _pin.Set(_level);
        _follows = !_pin.ReadsOtherThan(_level);
    }

    /// <inheritdoc/>
    public void Dispose() => _pin.Dispose();
}
