using System.Device.Gpio;
using System.Device.Gpio.Drivers;

namespace OnboardHeat.Daemon.Running;

/// <summary>The GPIO chip of this machine, as contacts and outputs open it.</summary>
internal static class Board
{
    /// <summary>
    /// A controller of its own, through the kernel's character device and whichever generation of libgpiod is
    /// installed.
    /// </summary>
    /// <exception cref="IOException">There is no chip, no library for it, or no right to it; said in words.</exception>
    public static GpioController Open()
    {
        try
        {
            return OpenByEither();
        }
        catch (Exception fault) when (fault is not OutOfMemoryException)
        {
            throw new IOException($"no GPIO lines to be had: {Innermost(fault)}", fault);
        }
    }

    private static GpioController OpenByEither()
    {
        try
        {
            return new GpioController(new LibGpiodDriver());
        }
        catch (Exception fault) when (fault is not OutOfMemoryException)
        {
            // A machine with the library's second generation has none of its first.
            return new GpioController(new LibGpiodV2Driver(0));
        }
    }

    /// <summary>
    /// What really went wrong: one sentence, without the loader's advice and its list of every place it looked in.
    /// </summary>
    private static string Innermost(Exception fault)
    {
        var message = fault.GetBaseException().Message;
        var end = message.AsSpan().IndexOfAny('\r', '\n');
        var sentence = message.IndexOf(". ", StringComparison.Ordinal);
        end = end < 0 || (sentence >= 0 && sentence < end) ? sentence : end;
        return end < 0 ? message : message[..end];
    }
}
