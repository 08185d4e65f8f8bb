using System.Collections.Concurrent;
using System.Net.Sockets;
using System.Text;
using System.Text.Json;
using OnboardHeat.Core.Scans;
using OnboardHeat.Engine.Ports;
using OnboardHeat.History;

namespace OnboardHeat.Limits.Daemons;

/// <summary>
/// Kills the whole daemon at random moments, over and over on one record. What it has handed on with a running number
/// it has acknowledged as recorded: at the end each such entry must be there. And after each start it must judge within
/// a second.
/// </summary>
internal static class DaemonKills
{
    private const int AtOnce = 4;
    private const double JudgingWithinS = 1;

    public static async Task<int> RunAsync(int seed, int kills)
    {
        var entries = new ConcurrentDictionary<(string Van, long Number), string>();
        var changed = new ConcurrentBag<string>();
        await using var broker =
            new TrialBroker(DaemonVan.FreePort(), (topic, payload) => Take(topic, payload, entries, changed));
        await broker.StartAsync();
        var parts = await Task.WhenAll(Enumerable.Range(0, AtOnce).Select(i =>
            KillAsync($"van-{i}", broker.Port, new Random(seed + i), (kills / AtOnce) + (i < kills % AtOnce ? 1 : 0),
            entries)));
        var starts = parts.SelectMany(part => part.Starts).Order().ToArray();
        var handed = entries.Count;
        Console.WriteLine(
            $"  {handed} entries were handed on; start to judging: median {starts[starts.Length / 2]:0.000} s, longest"
                + $" {starts[^1]:0.000} s");
        var verdict = Verdict.None("entries handed on and not on record", parts.Sum(part => part.Lost), handed, seed)
            | Verdict.None("entries that came again with other words", changed.Count, handed, seed)
            | Verdict.None("starts that told of damage", parts.Sum(part => part.Damaged), kills, seed)
            | Verdict.None("kills without a single entry (the trial would be empty)", handed == 0 ? 1 : 0, 1, seed);
        return verdict | (DaemonProcess.IsAheadOfTime
            ? Verdict.AtMost("judging again, s, slowest of 99 in 100", starts[(int)((starts.Length - 1) * 0.99)],
                JudgingWithinS, seed)
            : 0);
    }

    private static void Take(
        string topic, string payload, ConcurrentDictionary<(string Van, long Number), string> entries,
        ConcurrentBag<string> changed)
    {
        var parts = topic.Split('/');
        if (parts is not ["onboardheat", var van, "record"])
        {
            return;
        }

        var number = JsonDocument.Parse(payload).RootElement.GetProperty("number").GetInt64();
        if (entries.GetOrAdd((van, number), payload) is var before && before != payload
            && Undated(before) != Undated(payload))
        {
            changed.Add($"{before} / {payload}");
        }
    }

    /// <summary>A date may be worked out better later; the entry is the same.</summary>
    private static string Undated(string payload)
    {
        var entry = JsonDocument.Parse(payload).RootElement;
        return string.Join('|', entry.EnumerateObject().Where(p => p.Name != "time").Select(p => p.ToString()));
    }

    private static async Task<(List<double> Starts, int Lost, int Damaged)> KillAsync(
        string id, int port, Random random, int kills, ConcurrentDictionary<(string Van, long Number), string> entries)
    {
        using var van = new DaemonVan(id, port, [Channel.TankTop, Channel.Flow], 1);
        van.Set(Channel.TankTop, 42.5);
        van.Set(Channel.Flow, 31.25);
        var starts = new List<double>();
        var damaged = 0;
        for (var i = 0; i < kills; i++)
        {
            using var daemon = DaemonProcess.Start(van);
            starts.Add((await daemon.ReadyAsync())?.TotalSeconds ?? double.PositiveInfinity);
            await NoteAsync(van.ControlSocket, $"note {i} of {id}");
            await Task.Delay(TimeSpan.FromMilliseconds(random.Next(2500)), TimeProvider.System);
            await daemon.KillAsync();
            damaged += daemon.Log.Contains("set aside", StringComparison.Ordinal)
                || daemon.Log.Contains("has lost", StringComparison.Ordinal)
                ? 1 : 0;
        }

        return (starts, await MissingAsync(van, entries), damaged);
    }

    /// <summary>Writes a note over the control socket, which comes up a moment after the judging.</summary>
    private static async Task NoteAsync(string path, string words)
    {
        for (var tries = 0; tries < 150; tries++)
        {
            using var socket = new Socket(AddressFamily.Unix, SocketType.Stream, ProtocolType.Unspecified);
            try
            {
                await socket.ConnectAsync(new UnixDomainSocketEndPoint(path));
                await socket.SendAsync(Encoding.UTF8.GetBytes($$"""{"command":"note","text":"{{words}}"}""" + "\n"));
                await socket.ReceiveAsync(new byte[4096]);
                return;
            }
            catch (SocketException)
            {
                await Task.Delay(TimeSpan.FromMilliseconds(20), TimeProvider.System);
            }
        }
    }

    private static async Task<int> MissingAsync(DaemonVan van, ConcurrentDictionary<(string Van, long Number),
        string> entries)
    {
        await using var record = ClosedRecord.Open(van.State);
        var events = new HashSet<(int, double, string)>();
        await foreach (
            var happened in record.Reader.ReadEventsAsync(DateTimeOffset.MinValue, DateTimeOffset.MaxValue, default))
        {
            events.Add((happened.Run, Math.Round(happened.Elapsed.TotalSeconds, 3),
                $"{happened.Kind} {happened.Name} {happened.Text}"));
        }

        await foreach (
            var figures in record.Reader.ReadFiguresAsync(DateTimeOffset.MinValue, DateTimeOffset.MaxValue, default))
        {
            events.Add((figures.Run, Math.Round(figures.Elapsed.TotalSeconds, 3), "figures"));
        }

        var missing = 0;
        foreach (var (key, payload) in entries.Where(entry => entry.Key.Van == van.Id))
        {
            var entry = JsonDocument.Parse(payload).RootElement;
            var kind = entry.GetProperty("kind").GetString()!;
            var words = kind == "figures" ? kind
                : $"{kind} {entry.GetProperty("name").GetString()} {entry.GetProperty("text").GetString()}";
            if (!events.Contains(
                (entry.GetProperty("run").GetInt32(), entry.GetProperty("elapsedS").GetDouble(), words)))
            {
                missing++;
                await Console.Error.WriteLineAsync($"{van.Id}: entry {key.Number} is not on record: {payload}");
            }
        }

        return missing;
    }
}
