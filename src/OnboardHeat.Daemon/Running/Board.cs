using System.Device.Gpio;
using System.Device.Gpio.Drivers;

namespace OnboardHeat.Daemon.Running;

/// <summary>The GPIO chip of this machine, as contacts and outputs open it.</summary>
internal static class Board
{
    /// <summary>A controller of its own, through the kernel's character device and whichever generation of libgpiod is installed.</summary>
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

    /// <summary>What really went wrong, without the loader's list of every place it looked in.</summary>
    private static string Innermost(Exception fault)
    {
        var first = fault.GetBaseException().Message.AsSpan();
        var end = first.IndexOfAny('\r', '\n');
        return (end < 0 ? first : first[..end]).ToString();
    }
}
