using System.Net;
using System.Net.Sockets;
using OnboardHeat.Daemon.Tests.Support;

namespace OnboardHeat.Daemon.Tests.Running;

/// <summary>Asked to end, the daemon does so within six seconds, whatever it waits for.</summary>
[Trait("Category", "Program")]
public sealed class EndingProgramTests
{
    private static readonly TimeSpan s_promised = TimeSpan.FromSeconds(6);

    [Fact]
    public async Task AskedBeforeTheFirstLine_WhileTheListOfTheBusHangs_Ends()
    {
        using var van = new BusFolder();
        await van.HangListAsync();
        using var daemon = RunningDaemon.Start(van.Configuration);
        await Until.HoldsAsync(() => File.Exists(Path.Combine(van.State, "daemon.lock")), "the daemon has begun");
        await AssertEndsAsync(daemon);
    }

    [Fact]
    public async Task AskedAtItsFirstLine_Ends()
    {
        using var van = new BusFolder();
        using var daemon = RunningDaemon.Start(van.Configuration);
        await daemon.SaysAsync("OnboardHeat 0.1.0");
        await AssertEndsAsync(daemon);
    }

    [Fact]
    public async Task AskedWhileABrokerAcceptsAndNeverAnswers_Ends()
    {
        using var silent = new TcpListener(IPAddress.Loopback, 0);
        silent.Start();
        using var van = new BusFolder();
        using var daemon = RunningDaemon.Start(
            van.Configuration, ("ONBOARDHEAT__Messaging__Host", "127.0.0.1"),
            ("ONBOARDHEAT__Messaging__Port", $"{((IPEndPoint)silent.LocalEndpoint).Port}"));
        using var connection = await silent.AcceptTcpClientAsync();
        await daemon.SaysAsync("page at");
        await AssertEndsAsync(daemon);
    }

    [Fact]
    public async Task AskedWhileSomebodyHoldsTheControlSocketAndSaysNothing_Ends()
    {
        using var van = new BusFolder();
        using var daemon = RunningDaemon.Start(van.Configuration);
        await daemon.SaysAsync("control socket");
        using var caller = new Socket(AddressFamily.Unix, SocketType.Stream, ProtocolType.Unspecified);
        await caller.ConnectAsync(new UnixDomainSocketEndPoint(van.Control));
        await AssertEndsAsync(daemon);
    }

    private static async Task AssertEndsAsync(RunningDaemon daemon)
    {
        var (code, took) = await daemon.TerminateAsync();
        Assert.Equal(0, code);
        Assert.True(took < s_promised, $"took {took}; {daemon.Log}");
    }
}
