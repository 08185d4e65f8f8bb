using System.Device.I2c;
using Iot.Device.Ssd13xx;
using Iot.Device.Ssd13xx.Commands;
using Iot.Device.Ssd13xx.Commands.Ssd1306Commands;
using Column = Iot.Device.Ssd13xx.Commands.Ssd1306Commands.SetColumnAddress;

namespace OnboardHeat.Outputs.Showing;

/// <summary>
/// A 128x64 or 128x32 panel with an SSD1306 on I2C, by the bindings' driver. The driver sets every panel up for 32
/// rows and draws no more than that (4.2.0, seen on a fake bus), so the taller panel gets its own ratio, pin layout
/// and pages after it; figures from the controller's data sheet.
/// </summary>
internal sealed class OledPanel : IDisposable
{
    /// <summary>Brightness by day and by night, steps of 255: full, and what does not light up a bunk.</summary>
    public const byte DayContrast = 0xCF, NightContrast = 0x01;

    private readonly Ssd1306 _driver;
    private readonly int _height;

    /// <exception cref="IOException">There is no panel at that address.</exception>
    public OledPanel(I2cDevice device, int height)
    {
        BlankImages.Register();
        _height = height;
        _driver = new Ssd1306(device, Canvas.Width, height);
        if (height == 64)
        {
            _driver.SendCommand(new SetMultiplexRatio(63));
            _driver.SendCommand(
                new SetComPinsHardwareConfiguration(alternativeComPinConfiguration: true, enableLeftRightRemap: false));
        }
    }

    /// <summary>Shows a canvas.</summary>
    public void Show(Canvas canvas)
    {
        _driver.SendCommand(new Column(0, Canvas.Width - 1));
        _driver.SendCommand(new SetPageAddress(PageAddress.Page0, (PageAddress)((_height / 8) - 1)));
        Span<byte> page = stackalloc byte[Canvas.Width];
        for (var i = 0; i < _height / 8; i++)
        {
            canvas.Bytes.Slice(i * Canvas.Width, Canvas.Width).CopyTo(page);
            _driver.SendData(page);
        }
    }

    /// <summary>Sets the brightness.</summary>
    public void Contrast(byte contrast) => _driver.SendCommand(new SetContrastControlForBank0(contrast));

    /// <summary>Lights it or leaves it dark; what it shows is kept.</summary>
    public void Light(bool isOn) => _driver.EnableDisplay(isOn);

    public void Dispose() => _driver.Dispose();
}
