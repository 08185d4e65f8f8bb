using System.Device.I2c;
using System.Text;

namespace OnboardHeat.Adapters.Tests.Outputs;

/// <summary>
/// An SSD1306 panel that is not there: it keeps every byte, and does with them what the controller's data sheet says,
/// so that a test can look at what would be seen. A test pulls its plug at will.
/// </summary>
internal sealed class FakePanel
{
    private readonly byte[] _memory = new byte[8 * 128];
    private int _column, _page, _firstColumn, _lastColumn = 127, _firstPage, _lastPage = 7;

    public bool IsPlugged { get; set; } = true;

    /// <summary>How often somebody opened it.</summary>
    public int Opened { get; private set; }

    public List<byte[]> Writes { get; } = [];

    public bool IsLit { get; private set; }

    public byte Contrast { get; private set; }

    /// <summary>Multiplex ratio plus one: the rows that it drives.</summary>
    public int Rows { get; private set; }

    /// <summary>The byte after 0xDA: 0x12 for 64 rows, 0x02 for 32.</summary>
    public byte ComPins { get; private set; }

    public I2cDevice Open()
    {
        Opened++;
        return new Device(this);
    }

    /// <summary>What is to be seen, a letter a pixel.</summary>
    public string Picture()
    {
        var seen = new StringBuilder();
        for (var y = 0; y < Rows; y++)
        {
            for (var x = 0; x < 128; x++)
            {
                seen.Append((_memory[(y / 8 * 128) + x] >> (y % 8) & 1) == 1 ? '#' : '.');
            }

            seen.Append('\n');
        }

        return seen.ToString();
    }

    private void Take(ReadOnlySpan<byte> bytes)
    {
        if (!IsPlugged)
        {
            throw new IOException("Error 121 performing I2C data transfer.");
        }

        Writes.Add(bytes.ToArray());
        if (bytes[0] == 0x40)
        {
            Store(bytes[1..]);
        }
        else
        {
            Command(bytes[1..]);
        }
    }

    private void Store(ReadOnlySpan<byte> data)
    {
        foreach (var one in data)
        {
            _memory[(_page * 128) + _column] = one;
            _column++;
            if (_column > _lastColumn)
            {
                _column = _firstColumn;
                _page = _page >= _lastPage ? _firstPage : _page + 1;
            }
        }
    }

    private void Command(ReadOnlySpan<byte> command)
    {
        switch (command[0])
        {
            case 0x21:
                (_firstColumn, _lastColumn, _column) = (command[1], command[2], command[1]);
                break;
            case 0x22:
                (_firstPage, _lastPage, _page) = (command[1], command[2], command[1]);
                break;
            case 0x81:
                Contrast = command[1];
                break;
            case 0xA8:
                Rows = command[1] + 1;
                break;
            case 0xAE or 0xAF:
                IsLit = command[0] == 0xAF;
                break;
            case 0xDA:
                ComPins = command[1];
                break;
        }
    }

    private sealed class Device(FakePanel panel) : I2cDevice
    {
        public override I2cConnectionSettings ConnectionSettings { get; } = new(1, 0x3C);

        public override void Read(Span<byte> buffer) => throw new NotSupportedException();

        public override void Write(ReadOnlySpan<byte> buffer) => panel.Take(buffer);

        public override void WriteRead(ReadOnlySpan<byte> writeBuffer, Span<byte> readBuffer) =>
            throw new NotSupportedException();
    }
}
