using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;

namespace OnboardHeat.Limits.Wires;

/// <summary>
/// mosquitto_sub as an outside witness that stamps what it hears; it connects again by itself when the broker comes
/// back.
/// </summary>
internal sealed class Listener : IDisposable
{
    private readonly Process _process;
    private readonly ConcurrentQueue<Heard> _heard = [];
    private volatile bool _isSubscribed;

    private Listener(Process process)
    {
        _process = process;
        process.OutputDataReceived += (_, line) => Take(line.Data);
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
    }

    public IReadOnlyCollection<Heard> All => _heard;

    /// <summary>Listens to everything under the root; returns once the broker has confirmed it.</summary>
    public static async Task<Listener> StartAsync(int port)
    {
        // -d prints when the subscription stands; stdbuf makes it print line by line.
        string[] arguments =
        [
            "-oL", TestBroker.Find("mosquitto_sub"), "-V", "5", "-h", "127.0.0.1", "-p",
            port.ToString(CultureInfo.InvariantCulture),
            "-t", "onboardheat/#", "-q", "1", "-d", "-F", "%U|%t|%p",
        ];
        var start = new ProcessStartInfo("stdbuf", arguments) { RedirectStandardOutput = true,
            RedirectStandardError = true };
        var listener = new Listener(Process.Start(start)!);
        await Patience.UntilAsync(() => listener._isSubscribed, 10, "mosquitto_sub is subscribed");
        return listener;
    }

    /// <summary>Waits for a message that fits and came after what had been heard at <paramref name="after"/>.</summary>
    public async Task<Heard> FirstAsync(
        string topicEnd, Func<string, bool> fits, int after, double withinS, string what)
    {
        Heard? found = null;
        await Patience.UntilAsync(
            () => (found = _heard.Skip(after).FirstOrDefault(
                one => one.Topic.EndsWith(topicEnd, StringComparison.Ordinal) && fits(one.Payload))) is not null,
            withinS, what);
        return found!;
    }

    public void Dispose()
    {
        if (!_process.HasExited)
        {
            _process.Kill(entireProcessTree: true);
            _process.WaitForExit();
        }

        _process.Dispose();
    }

    private void Take(string? line)
    {
        if (line is null)
        {
            return;
        }

        _isSubscribed |= line.StartsWith("Subscribed (mid", StringComparison.Ordinal);
        var parts = line.Split('|', 3);
        if (parts.Length == 3 && double.TryParse(
            parts[0], NumberStyles.Float, CultureInfo.InvariantCulture, out var at))
        {
            _heard.Enqueue(new Heard(at, parts[1], parts[2]));
        }
    }
}
