using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace OnboardHeat.Adapters.Tests.Glance;

public sealed class TlsTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory();

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public async Task PageWithACertificate_SpeaksTlsOnly_AndItsCookieNothingElse()
    {
        var (certificate, key) = Write();
        await using var page = await ServedPage.StartAsync(certificate: (certificate, key));
        Assert.Equal("https", page.Server.Address!.Scheme);
        var code = page.Server.NewCode();
        Assert.StartsWith("https://", code.Addresses[0]);
        using var answer = await page.Client.SendAsync(
            page.Ask(HttpMethod.Post, "/api/v1/pair", $$"""{"code":"{{code.Code}}"}"""));
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Contains("secure", answer.Headers.GetValues("Set-Cookie").Single());
        using var plain = new HttpClient();
        await Assert.ThrowsAsync<HttpRequestException>(() => plain.GetAsync($"http://{page.Host}/"));
    }

    private (string Certificate, string Key) Write()
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest("CN=localhost", key, HashAlgorithmName.SHA256);
        var now = TimeProvider.System.GetUtcNow();
        using var made = request.CreateSelfSigned(now.AddDays(-1), now.AddDays(1));
        var files =
            (Certificate: Path.Combine(_folder.FullName, "page.pem"), Key: Path.Combine(_folder.FullName, "page.key"));
        File.WriteAllText(files.Certificate, made.ExportCertificatePem());
        File.WriteAllText(files.Key, key.ExportPkcs8PrivateKeyPem());
        return files;
    }
}
