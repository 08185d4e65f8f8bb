using System.Net;
using System.Net.Sockets;
using MQTTnet;
using OnboardHeat.Core;
using OnboardHeat.Daemon.Demo;
using OnboardHeat.Daemon.Tests.Support;

namespace OnboardHeat.Daemon.Tests.Demonstrating;

public sealed class DemoBroadcastTests
{
    private static readonly TimeSpan s_patience = TimeSpan.FromSeconds(30);

    [Fact]
    public async Task Listener_HearsThePictureOfTheDay()
    {
        var port = FreePort();
        await using var broadcast = new DemoBroadcast(port, TimeProvider.System);
        Assert.Contains($"-p {port}", broadcast.Notice, StringComparison.Ordinal);
        using var listener = new MqttClientFactory().CreateMqttClient();
        var heard = new TaskCompletionSource<string>(TaskCreationOptions.RunContinuationsAsynchronously);
        listener.ApplicationMessageReceivedAsync += message =>
        {
            heard.TrySetResult(message.ApplicationMessage.ConvertPayloadToString());
            return Task.CompletedTask;
        };
        await ConnectAsync(listener, port);
        await listener.SubscribeAsync("onboardheat/demo/picture");
        var van = DemoDay.Begin(1);
        var monitor = new Core.Monitor(DemoDay.Description, KeptState.Fresh);
        while (!heard.Task.IsCompleted && van.Step())
        {
            broadcast.Publish(van.Scan, monitor.Observe(van.Scan));
            await Task.Delay(TimeSpan.FromMilliseconds(5), TimeProvider.System, CancellationToken.None);
        }

        Assert.Contains(
            "\"van\":\"demo\"", await heard.Task.WaitAsync(s_patience, TimeProvider.System), StringComparison.Ordinal);
    }

    [Fact]
    public async Task PortThatIsTaken_IsSaidInOneLineAndTheDemoGoesOn()
    {
        using var other = new TcpListener(IPAddress.Loopback, 0);
        other.Start();
        var port = ((IPEndPoint)other.LocalEndpoint).Port;
        var outcome = await WholeProgram.RunAsync(["demo", "--speed", "20000", "--port", $"{port}"]);
        Assert.Equal((0, ""), (outcome.ExitCode, outcome.Errors));
        Assert.StartsWith($"port {port} is not to be had", outcome.Output, StringComparison.Ordinal);
        Assert.Contains("The flow hose came off at the tank.", outcome.Output, StringComparison.Ordinal);
    }

    private static async Task ConnectAsync(IMqttClient listener, int port)
    {
        var options = new MqttClientOptionsBuilder().WithTcpServer("127.0.0.1", port)
            .WithProtocolVersion(MQTTnet.Formatter.MqttProtocolVersion.V500).Build();
        var began = TimeProvider.System.GetTimestamp();
        while (!listener.IsConnected)
        {
            Assert.True(TimeProvider.System.GetElapsedTime(began) < s_patience, "the demo's broker answers");
            try
            {
                await listener.ConnectAsync(options);
            }
            catch (MQTTnet.Exceptions.MqttCommunicationException)
            {
                // It opens its port a moment after the demo begins.
                await Task.Delay(TimeSpan.FromMilliseconds(20), TimeProvider.System, CancellationToken.None);
            }
        }
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
