using System.Collections.Concurrent;
using System.Net.Sockets;
using System.Text;
using OnboardHeat.Daemon.Tests.Support;

namespace OnboardHeat.Daemon.Tests.Running;

/// <summary>What a service manager and a person with a shell rely on.</summary>
[Trait("Category", "Program")]
public sealed class ServiceProgramTests
{
    [Fact]
    public async Task ServiceManager_HearsReadyThenTheWatchdogFedThenStopping()
    {
        // The protocol of sd_notify(3): datagrams of NAME=VALUE lines to the socket that NOTIFY_SOCKET names.
        using var folder = new TemporaryFolder();
        using var manager = new Socket(AddressFamily.Unix, SocketType.Dgram, ProtocolType.Unspecified);
        manager.Bind(new UnixDomainSocketEndPoint(folder["notify"]));
        var heard = new ConcurrentQueue<string>();
        _ = ListenAsync(manager, heard);

        using var van = new BusFolder();
        using var daemon = RunningDaemon.Start(van.Configuration, ("NOTIFY_SOCKET", folder["notify"]));
        await Until.HoldsAsync(() => heard.Count(word => word == "WATCHDOG=1") >= 3, "the watchdog is fed");
        await daemon.TerminateAsync();
        await Until.HoldsAsync(() => heard.Contains("STOPPING=1"), "stopping is said");
        Assert.Single(heard, word => word == "READY=1");
        Assert.True(heard.ToList().IndexOf("READY=1") < heard.ToList().IndexOf("STOPPING=1"));
    }

    [Fact]
    public async Task ServiceManagerThatDoesNotRead_StopsNoJudging()
    {
        // The kernel keeps so many datagrams for a socket (net.unix.max_dgram_qlen, ten unless changed) and then lets a
        // sender wait.
        using var folder = new TemporaryFolder();
        using var manager = new Socket(AddressFamily.Unix, SocketType.Dgram, ProtocolType.Unspecified);
        manager.Bind(new UnixDomainSocketEndPoint(folder["notify"]));
        using var van = new BusFolder();
        using var daemon = RunningDaemon.Start(van.Configuration, ("NOTIFY_SOCKET", folder["notify"]));
        await daemon.SaysAsync("control socket");
        for (var i = 0; i < 12; i++)
        {
            // Each note makes a turn, and each turn feeds.
            Assert.Equal(
                0, (await WholeProgram.RunAsync(["note", $"turn {i}", "--config", van.Configuration])).ExitCode);
        }
    }

    [Fact]
    public async Task ControlSocket_IsForOwnerAndGroupOnly()
    {
        using var van = new BusFolder();
        using var daemon = RunningDaemon.Start(van.Configuration);
        await daemon.SaysAsync("control socket");
        const UnixFileMode OwnerAndGroup =
            UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.GroupRead | UnixFileMode.GroupWrite;
        Assert.Equal(OwnerAndGroup, File.GetUnixFileMode(van.Control));
        await daemon.TerminateAsync();
        Assert.False(File.Exists(van.Control), "the socket goes with the daemon");
    }

    [Fact]
    public async Task LogFile_HasTheLinesOfTheJournal()
    {
        using var folder = new TemporaryFolder();
        using var van = new BusFolder();
        var toFile = ("ONBOARDHEAT__Log__File", folder["onboardheat.log"]);
        using (var daemon = RunningDaemon.Start(van.Configuration, toFile))
        {
            await daemon.SaysAsync("page at");
            await daemon.TerminateAsync();
        }

        var text = await File.ReadAllTextAsync(Assert.Single(Directory.GetFiles(folder.Path, "onboardheat*.log")));
        Assert.Contains("2 of 2 probes found", text, StringComparison.Ordinal);
        Assert.Contains("stopped", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task DamagedSmallFile_IsToldAndTheSecondCopyIsTaken()
    {
        using var van = new BusFolder();
        for (var run = 0; run < 2; run++)
        {
            using var daemon = RunningDaemon.Start(van.Configuration);
            await daemon.SaysAsync("page at");
            await daemon.TerminateAsync();
        }

        var file = Path.Combine(van.State, "learnt.onboardheat");
        var bytes = await File.ReadAllBytesAsync(file);
        bytes[^10] ^= 0x20;
        await File.WriteAllBytesAsync(file, bytes);
        using var next = RunningDaemon.Start(van.Configuration);
        await next.SaysAsync("damaged, what was learnt in it is lost");
        await next.SaysAsync("control socket");
        Assert.Contains("run 3;", next.Log, StringComparison.Ordinal);
    }

    private static async Task ListenAsync(Socket manager, ConcurrentQueue<string> heard)
    {
        var buffer = new byte[4096];
        try
        {
            while (true)
            {
                var count = await manager.ReceiveAsync(buffer, SocketFlags.None);
                var notice = Encoding.UTF8.GetString(buffer, 0, count);
                foreach (var word in notice.Split('\n', StringSplitOptions.RemoveEmptyEntries))
                {
                    heard.Enqueue(word);
                }
            }
        }
        catch (Exception end) when (end is SocketException or ObjectDisposedException)
        {
            // The test is over.
        }
    }
}
