using System.Device.I2c;
using Microsoft.Extensions.Logging;
using OnboardHeat.Core;
using OnboardHeat.Engine;
using OnboardHeat.Engine.Options;
using OnboardHeat.Outputs.Pins;

namespace OnboardHeat.Outputs.Showing;

/// <summary>
/// Shows the newest picture on the small display. Only what has changed is sent; a panel that was unplugged is set up
/// and drawn anew when it answers again. Nothing it meets can hurt anybody else.
/// </summary>
public sealed class DisplayWorker : IDisposable
{
    /// <summary>Turns that may wait: only the newest is shown.</summary>
    public const int QueueCapacity = 2;

    /// <summary>
    /// The whole picture is sent again after so long: a panel that lost its supply for a moment and answers again would
    /// stay dark for ever.
    /// </summary>
    public static readonly TimeSpan RefreshEvery = TimeSpan.FromMinutes(1);

    private readonly TurnQueue _turns;
    private readonly TimeProvider _time;
    private readonly Func<I2cDevice> _open;
    private readonly Dimming _dimming;
    private readonly Retry _retry;
    private readonly Canvas _canvas;
    private readonly byte[] _shown;
    private readonly long _start;
    private OledPanel? _panel;
    private long _count;
    private Brightness? _brightness;
    private TimeSpan _refreshedAt;

    /// <summary>A worker for one run; <paramref name="open"/> gives the device on its bus.</summary>
    public DisplayWorker(OutputOptions options, Func<I2cDevice> open, TurnQueue turns, TimeProvider time, ILogger log)
    {
        ArgumentNullException.ThrowIfNull(options);
        ArgumentNullException.ThrowIfNull(time);
        (_turns, _time, _open, _start) = (turns, time, open, time.GetTimestamp());
        _dimming = new Dimming(options, time.LocalTimeZone);
        _retry = new Retry("display", time, log);
        _canvas = new Canvas(options.DisplayHeight ?? 64);
        _shown = new byte[_canvas.Bytes.Length];
    }

    /// <summary>Why the panel does not work; null while it does.</summary>
    public string? Trouble => _retry.Reason;

    /// <summary>Pictures dealt with, shown or not, for tests.</summary>
    internal long Shown => Volatile.Read(ref _count);

    /// <summary>Whether the configuration asks for it.</summary>
    public static bool IsWanted(OutputOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        return options.DisplayHeight is not null;
    }

    /// <summary>Runs until the feed ends or it is asked to stop.</summary>
    public async Task RunAsync(CancellationToken stopping)
    {
        try
        {
            await foreach (var turn in _turns.Reader.ReadAllAsync(stopping))
            {
                Show(turn.Picture);
                Volatile.Write(ref _count, _count + 1);
            }
        }
        catch (OperationCanceledException) when (stopping.IsCancellationRequested)
        {
            // Asked to stop.
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        if (_panel is not null)
        {
            Try(panel => panel.Light(false));
        }

        Close();
    }

    private void Show(Picture picture)
    {
        if (!_retry.IsDue)
        {
            return;
        }

        Face.Draw(_canvas, picture);
        var brightness = _dimming.Of(picture);
        Try(panel => Send(panel, brightness));
    }

    private void Send(OledPanel panel, Brightness brightness)
    {
        var now = _time.GetElapsedTime(_start);
        var isAnew = _brightness is null || now - _refreshedAt >= RefreshEvery;
        if (isAnew || brightness != _brightness)
        {
            if (brightness != Brightness.Off)
            {
                panel.Contrast(brightness == Brightness.Full ? OledPanel.DayContrast : OledPanel.NightContrast);
            }

            panel.Light(brightness != Brightness.Off);
        }

        if (brightness != Brightness.Off && (isAnew || !_canvas.Bytes.SequenceEqual(_shown)))
        {
            panel.Show(_canvas);
            _canvas.Bytes.CopyTo(_shown);
        }

        _refreshedAt = isAnew ? now : _refreshedAt;
        _brightness = brightness;
    }

    private void Try(Action<OledPanel> act)
    {
        try
        {
            act(_panel ??= new OledPanel(_open(), _canvas.Height));
            _retry.Worked();
        }
        catch (Exception e) when (e is not OutOfMemoryException)
        {
            Close();
            _retry.Failed(e);
        }
    }

    private void Close()
    {
        _brightness = null;
        try
        {
            _panel?.Dispose();
        }
        catch (Exception e) when (e is IOException or ObjectDisposedException)
        {
            // It was gone already.
        }

        _panel = null;
    }
}
