using System.Globalization;
using System.Text.Json;
using OnboardHeat.Core.Scans;

namespace OnboardHeat.Limits.Wires;

/// <summary>
/// The whole program over fabricated wires: a drive is shown on the bus in real time, a witness listens at mosquitto.
/// The broker is killed and comes back, a probe is unplugged and plugged in again, the hose comes off.
/// </summary>
internal static class VanByWire
{
    /// <summary>
    /// Seconds of the drive before the hose comes off: enough for the broker and the probe, or for a look at ten quiet
    /// minutes.
    /// </summary>
    private const double ShortLeadS = 20, LongLeadS = 600;

    /// <summary>
    /// Nine of ten losses are to be told within this (the leak issue's figure for a van with a tray), seconds.
    /// </summary>
    private const double LossWithinS = 180;

    private const Channel Pulled = Channel.Surroundings;

    /// <summary>Our own drive, or a recorded one with the second at which coolant begins to leave.</summary>
    public static async Task<int> RunAsync(int seed, bool isShort, string? recording, double? lossAtS)
    {
        var drive = recording is null ? Drive.OfSimulation(seed) : Drive.OfRecording(recording);
        var lossS = lossAtS ?? Drive.HoseOffAtS;
        using var bench = new Bench(drive.Fitted, scanSeconds: 1);
        await bench.Broker.StartAsync();
        using var listener = await Listener.StartAsync(bench.Broker.Port);
        await using var player = new Player(drive, bench.Tree, lossS - (isShort ? ShortLeadS : LongLeadS));
        using var daemon = DaemonUnderTest.Start(Bench.Program, bench.Configuration);
        try
        {
            await PictureArrivesAsync(listener, daemon);
            await ProbeComesAndGoesAsync(listener, player);
            await BrokerComesAndGoesAsync(listener, bench.Broker, daemon);
            await LossArrivesAsync(listener, player, lossS);
            TellFirstDrive(daemon.Log);
            var (code, tookS) = await daemon.TerminateAsync();
            Tell($"asked to end: exit {code} after {tookS:0.0} s");
            return code == 0 && tookS <= 6 ? 0 : 1;
        }
        catch (TimeoutException missing)
        {
            Tell($"MISSED: {missing.Message}\nthe daemon's journal:\n{daemon.Log}");
            return 1;
        }
    }

    private static async Task PictureArrivesAsync(Listener listener, DaemonUnderTest daemon)
    {
        var picture = await listener.FirstAsync("/picture", static _ => true, 0, 20, "the first picture at mosquitto");
        Tell($"first picture at mosquitto {1000 * (picture.At - daemon.StartedAt):0} ms after the start");
    }

    private static async Task ProbeComesAndGoesAsync(Listener listener, Player player)
    {
        var name = Channels.NameOf(Pulled);
        var before = listener.All.Count;
        player.Unplugged = Pulled;
        await listener.FirstAsync(
            "/picture", text => FaultOf(text, name) == "missing", before, 10, $"a picture without {name}");
        before = listener.All.Count;
        player.Unplugged = null;
        await listener.FirstAsync(
            "/picture", text => FaultOf(text, name) is null, before, 15, $"a picture with {name} again");
        Tell($"{name} unplugged: missing in the picture; plugged in again: believed again");
    }

    private static async Task BrokerComesAndGoesAsync(Listener listener, TestBroker broker, DaemonUnderTest daemon)
    {
        broker.Kill();
        await daemon.SaysAsync("alarms go on, trying again", 15);
        var before = listener.All.Count;
        await broker.StartAsync();
        var tookS = await Patience.UntilAsync(
            () => listener.All.Skip(before).Any(one => one.Topic.EndsWith("/picture", StringComparison.Ordinal)), 45,
            "a picture at the broker that came back");
        Tell($"broker killed and brought back: pictures again {tookS:0.0} s later");
    }

    private static async Task LossArrivesAsync(Listener listener, Player player, double lossS)
    {
        var leadS = Math.Max(0, lossS - player.NowS);
        var alarm = await listener.FirstAsync(
            "/alarms/coolant-loss", static text => text.Contains("\"unacknowledged\"", StringComparison.Ordinal), 0,
            leadS + LossWithinS,
            "coolant-loss at mosquitto");
        Tell(
            $"coolant-loss at mosquitto {player.NowS - lossS:0} s after the hose came off: {BecauseOf(alarm.Payload)}");
    }

    /// <summary>
    /// The long form begins with a cold engine, so that the first drive's list has something to tick.
    /// </summary>
    private static void TellFirstDrive(string journal)
    {
        foreach (var line in journal.Split('\n').Where(line => line.Contains("first drive", StringComparison.Ordinal)))
        {
            Tell($"{line}");
        }
    }

    private static string? FaultOf(string picture, string channel)
    {
        using var json = JsonDocument.Parse(picture);
        return json.RootElement.GetProperty("channels").GetProperty(channel).GetProperty("fault").GetString();
    }

    private static string? BecauseOf(string alarm)
    {
        using var json = JsonDocument.Parse(alarm);
        return json.RootElement.GetProperty("because").GetString();
    }

    private static void Tell(FormattableString words) =>
        Console.WriteLine(words.ToString(CultureInfo.InvariantCulture));
}
