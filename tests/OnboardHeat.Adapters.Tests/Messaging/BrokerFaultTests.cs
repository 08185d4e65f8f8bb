using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using Microsoft.Extensions.Time.Testing;
using OnboardHeat.Adapters.Tests.Support;
using OnboardHeat.Core.Watch;
using OnboardHeat.Messaging.Link;

namespace OnboardHeat.Adapters.Tests.Messaging;

/// <summary>Brokers that fail in every way we know: one clear line each, and the daemon goes on.</summary>
public sealed class BrokerFaultTests
{
    [Fact]
    public async Task NobodyListens_SaysSoOnce_AndFindsTheBrokerWhenItComes()
    {
        await using var broker = new Mosquitto();
        await using var worker = new RunningWorker(broker.Options);
        worker.Publish(SomeTurn.At(100, alarms: SomeTurn.Alarm(AlarmKind.CoolantLoss)));
        await SaidAsync(worker, "Connection refused");

        await broker.StartAsync();

        await worker.ConnectedAsync();
        await using var listener = await MosquittoListener.StartAsync(broker.Port, RunningWorker.Root + "alarms/#");
        Assert.Contains("unacknowledged", (await listener.FirstAsync("/alarms/coolant-loss")).Payload);
        Assert.Single(worker.Log.Lines, line => line.Contains("Connection refused", StringComparison.Ordinal));
    }

    [Fact]
    public async Task BrokerKilledAndBack_IsToldEverythingAnew()
    {
        await using var broker = await Mosquitto.StartAsync();
        await using var worker = new RunningWorker(broker.Options);
        await worker.ConnectedAsync();

        broker.Stop();
        await Until.HoldsAsync(
            () => worker.Log.Lines.Any(line => line.Contains("alarms go on", StringComparison.Ordinal)),
            "the loss is said");
        worker.Publish(SomeTurn.At(100, alarms: SomeTurn.Alarm(AlarmKind.CoolantLoss)));
        await broker.StartAsync();

        await Until.HoldsAsync(
            () => worker.Log.Lines.Any(line => line.Contains("connected again", StringComparison.Ordinal)),
            "it is back");
        await using var listener = await MosquittoListener.StartAsync(broker.Port, RunningWorker.Root + "#");
        Assert.Contains("unacknowledged", (await listener.FirstAsync("/alarms/coolant-loss")).Payload);
        Assert.Equal("yes", (await listener.FirstAsync("/alive")).Payload);
    }

    [Fact]
    public async Task PacketOf256Megabytes_IsCutOffBeforeMemoryIsTaken()
    {
        // PUBLISH with the largest remaining length there is: 268,435,455 (MQTT 5.0, section 1.5.5).
        await using var broker = new BadBroker(BadBroker.Accepts, [0x30, 0xFF, 0xFF, 0xFF, 0x7F]);
        var before = GC.GetTotalAllocatedBytes();
        await using var worker = new RunningWorker(broker.Options);

        await SaidAsync(worker, "sent a packet of 268435455 bytes, 65536 are the limit");

        Assert.InRange(GC.GetTotalAllocatedBytes() - before, 0, 200_000_000);
    }

    [Fact]
    public async Task Noise_IsOneLineWithoutControlCharacters()
    {
        await using var broker = new BadBroker("HTTP/1.1 400 Bad Request\r\n\r\n"u8.ToArray());
        await using var worker = new RunningWorker(broker.Options);

        await SaidAsync(worker, "alarms go on");

        Assert.All(worker.Log.Lines, line => Assert.DoesNotContain(line, char.IsControl));
    }

    [Fact]
    public async Task AcceptsAndNeverAnswers_IsGivenUpAfterTenSeconds()
    {
        await using var broker = new BadBroker();
        var time = new FakeTimeProvider();
        var settings =
            new LinkSettings { Host = "127.0.0.1", Port = broker.Options.Port, ClientId = "a", AliveTopic = "b" };
        await using var link = new MqttLink(settings, time);

        var connecting = link.ConnectAsync(CancellationToken.None);
        await Until.HoldsAsync(() => broker.Connections == 1, "the connection stands");
        time.Advance(LinkLimits.Answer - TimeSpan.FromMilliseconds(1));
        Assert.False(connecting.IsCompleted);
        time.Advance(TimeSpan.FromMilliseconds(1));

        Assert.Equal("no answer within 10 s", (await Assert.ThrowsAsync<BrokerException>(() => connecting)).Message);
    }

    [Fact]
    public async Task WrongPassword_IsOneLine_AndTheRightOneWithALineEndGetsIn()
    {
        await using var broker = new Mosquitto("allow_anonymous false", "password_file PLACE");
        var users = broker.WriteFile("users", "van:mountain\n");
        await RunAsync("mosquitto_passwd", "-U", users);
        broker.Replace("PLACE", users);
        await broker.StartAsync();
        var options = broker.Options;
        options.UserName = "van";
        options.PasswordFile = broker.WriteFile("password", "valley\n");
        File.SetUnixFileMode(options.PasswordFile, UnixFileMode.UserRead | UnixFileMode.UserWrite);
        await using var worker = new RunningWorker(options);
        await SaidAsync(worker, "refused: ");

        File.WriteAllText(options.PasswordFile, "mountain\r\n");

        await worker.ConnectedAsync();
    }

    [Fact]
    public async Task PasswordFileOpenToOthers_IsRefusedWithTheRemedy()
    {
        await using var broker = new Mosquitto();
        var path = broker.WriteFile("password", "mountain\n");
        File.SetUnixFileMode(
            path, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.GroupRead | UnixFileMode.OtherRead);

        Assert.Contains("chmod 640", Assert.Throws<BrokerException>(() => PasswordFile.Read(path)).Message);
        File.SetUnixFileMode(path, UnixFileMode.UserRead | UnixFileMode.GroupRead);
        Assert.Equal("mountain"u8.ToArray(), PasswordFile.Read(path));
    }

    [Fact]
    public async Task Tls_TrustsTheFileItIsGivenAndNothingElse()
    {
        using var key = RSA.Create(2048);
        var request = new CertificateRequest("CN=127.0.0.1", key, HashAlgorithmName.SHA256, RSASignaturePadding.Pkcs1);
        var names = new SubjectAlternativeNameBuilder();
        names.AddIpAddress(System.Net.IPAddress.Loopback);
        request.CertificateExtensions.Add(names.Build());
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(true, false, 0, true));
        var now = TimeProvider.System.GetUtcNow();
        using var certificate = request.CreateSelfSigned(now.AddDays(-1), now.AddDays(1));
        await using var broker = new Mosquitto("certfile CERT", "keyfile KEY");
        var pem = broker.WriteFile("cert.pem", certificate.ExportCertificatePem());
        broker.Replace("CERT", pem);
        broker.Replace("KEY", broker.WriteFile("key.pem", key.ExportPkcs8PrivateKeyPem()));
        await broker.StartAsync();
        var options = broker.Options;
        options.Tls = true;

        await using (var stranger = new RunningWorker(options))
        {
            await SaidAsync(stranger, "TLS: ");
            Assert.Contains(stranger.Log.Lines, line => line.Contains("TLS: ", StringComparison.Ordinal));
        }

        options.CaFile = pem;
        await using var worker = new RunningWorker(options);
        await worker.ConnectedAsync();
    }

    private static Task SaidAsync(RunningWorker worker, string words) => Until.HoldsAsync(
        () => worker.Log.Lines.Any(line => line.Contains(words, StringComparison.Ordinal)),
        () => $"the log says '{words}'; it said: {string.Join(" / ", worker.Log.Lines)}");

    private static async Task RunAsync(string program, params string[] arguments)
    {
        using var process = System.Diagnostics.Process.Start(Mosquitto.Find(program), arguments);
        await process.WaitForExitAsync();
        Assert.Equal(0, process.ExitCode);
    }
}
