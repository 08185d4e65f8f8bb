using System.Collections.Concurrent;
using System.Diagnostics;

namespace OnboardHeat.Adapters.Tests.Messaging;

/// <summary>
/// mosquitto_sub as an outside witness: prints each message with its MQTT 5 properties, which we read back.
/// </summary>
internal sealed class MosquittoListener : IAsyncDisposable
{
    // Conversions as in mosquitto_sub(1), "Output format": topic, retain, qos, content type, payload format, expiry,
    // response, correlation, payload.
    private const string Format = "%t|%r|%q|%C|%F|%E|%R|%D|%p";

    private readonly Process _process;
    private readonly ConcurrentQueue<Received> _received = [];

    private volatile bool _isSubscribed;
    private volatile string _lastLine = "";

    private MosquittoListener(Process process)
    {
        _process = process;
        process.OutputDataReceived += (_, e) => Take(e.Data);
        process.BeginOutputReadLine();
    }

    public IReadOnlyCollection<Received> All => _received;

    /// <summary>Listens to a filter and returns once the broker has confirmed that.</summary>
    public static async Task<MosquittoListener> StartAsync(int port, string filter, params string[] more)
    {
        // With -d the client prints when the subscription stands; its own stdout buffering is line by line through
        // stdbuf.
        var start = new ProcessStartInfo(
            "stdbuf", [
                "-oL", Mosquitto.Find("mosquitto_sub"), "-V", "5", "-h", "127.0.0.1", "-p", $"{port}", "-t", filter,
                "-q", "1", "-d", "-F", Format, .. more])
        {
            RedirectStandardOutput = true,
        };
        var listener = new MosquittoListener(Process.Start(start)!);
        await Until.HoldsAsync(
            () => listener._isSubscribed,
            () => $"mosquitto_sub is subscribed to {filter}; it said: {listener._lastLine}");
        return listener;
    }

    public async Task<Received> FirstAsync(Func<Received, bool> isIt, string what)
    {
        await Until.HoldsAsync(
            () => _received.Any(isIt),
            () => $"received: {what}; so far {string.Join(", ", _received.Select(r => $"{r.Topic}={r.Payload}"))}");
        return _received.First(isIt);
    }

    public Task<Received> FirstAsync(string topicEnd) =>
        FirstAsync(r => r.Topic.EndsWith(topicEnd, StringComparison.Ordinal), topicEnd);

    public ValueTask DisposeAsync()
    {
        if (!_process.HasExited)
        {
            _process.Kill();
        }

        _process.WaitForExit();
        _process.Dispose();
        return ValueTask.CompletedTask;
    }

    private void Take(string? line)
    {
        if (line is null)
        {
            return;
        }

        _lastLine = line;
        if (line.StartsWith("Subscribed (mid", StringComparison.Ordinal))
        {
            _isSubscribed = true;
            return;
        }

        var parts = line.Split('|', 9);
        if (parts.Length == 9)
        {
            _received.Enqueue(new Received(
                parts[0], parts[8], parts[1] == "1", int.Parse(parts[2]), parts[3], parts[4], parts[5], parts[6],
                parts[7]));
        }
    }
}
