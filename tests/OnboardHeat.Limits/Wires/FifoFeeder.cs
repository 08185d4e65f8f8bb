using System.Collections.Concurrent;
using System.Diagnostics;

namespace OnboardHeat.Limits.Wires;

/// <summary>
/// A probe whose file is a FIFO: opening it for writing waits until the daemon opens it for reading, so each read has
/// its time. The texts are given in turn.
/// </summary>
internal sealed class FifoFeeder : IDisposable
{
    private static readonly TimeSpan s_betweenTexts = TimeSpan.FromMilliseconds(20);

    private readonly string _path;
    private readonly string[] _texts;
    private int _given;
    private readonly Thread _feeding;
    private readonly ManualResetEventSlim _ending = new();

    public FifoFeeder(string path, params string[] texts)
    {
        (_path, _texts) = (path, texts);
        File.Delete(path);
        using var made = Process.Start("mkfifo", [path]);
        made.WaitForExit();
        _feeding = new Thread(Feed) { IsBackground = true };
        _feeding.Start();
    }

    /// <summary>When each read got its text, Unix time in seconds.</summary>
    public ConcurrentQueue<double> ReadAt { get; } = [];

    public void Dispose()
    {
        _ending.Set();
        // Whoever waits for a reader gets one.
        using (new FileStream(_path, FileMode.Open, FileAccess.ReadWrite))
        {
            _feeding.Join();
        }

        _ending.Dispose();
    }

    private void Feed()
    {
        do
        {
            using (
                var writer = new StreamWriter(
                    new FileStream(_path, FileMode.Open, FileAccess.Write, FileShare.ReadWrite, 0)))
            {
                writer.Write(_texts[_given++ % _texts.Length]);
            }

            ReadAt.Enqueue((TimeProvider.System.GetUtcNow() - DateTimeOffset.UnixEpoch).TotalSeconds);
            // The reader must see the end of the file before the next text, or it would read both as one.
        }
        while (!_ending.Wait(s_betweenTexts));
    }
}
