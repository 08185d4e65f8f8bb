using System.Net;
using OnboardHeat.Glance.Routing;

namespace OnboardHeat.Adapters.Tests.Glance;

/// <summary>Who is let in, tried on every route there is: the cases are made from the route table.</summary>
public sealed class GateTests
{
    private static readonly string[] s_foreignNames =
    [
        "evil.example", "evil.example:80", "van.evil.example", "localhost.evil.example", "127.0.0.1.evil.example",
        "127.0.0.1", "localhost",
        "localhost:1", "127.0.0.1:1", "127.0.0.2", "0.0.0.0", "[::]", "[::1]", "10.0.0.1", "192.168.1.1",
        "192.168.1.1:8420", "169.254.0.1",
        "2130706433", "0x7f000001", "017700000001", "127.1", "localhost.", "LOCALHOST.", "xn--localhost", "a", "a.b",
        "-", "_", "localhost,evil.example",
        "user@localhost", "localhost#", "localhost?", "local host", "evil.example:443", "evil.example.:80",
        "rebind.example", "1.1.1.1", "8.8.8.8:53",
        "[fe80::1]", "[::ffff:127.0.0.1]",
    ];

    [Fact]
    public async Task FortyForeignNames_OnEveryRoute_LearnNothing()
    {
        await using var page = await ServedPage.StartAsync(isReadingOpen: true);
        page.Turn(61.25);
        Assert.Equal(40, s_foreignNames.Length);
        foreach (var route in page.Server.Routes)
        {
            foreach (var name in s_foreignNames)
            {
                using var request = page.Ask(
                    new HttpMethod(route.Method), PathOf(route), route.Method == "POST" ? "{}" : null);
                request.Headers.TryAddWithoutValidation("Host", name);
                using var answer = await page.Client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead);
                Assert.True(
                    (int)answer.StatusCode is 421 or 400 or 403,
                    $"{route.Method} {route.Path} as '{name}' gave {(int)answer.StatusCode}");
                Assert.DoesNotContain("61.25", await answer.Content.ReadAsStringAsync());
            }
        }
    }

    public static TheoryData<string> Intruders => ["no pairing", "wrong origin", "no origin", "GET", "text body", "no "
        + "token", "token of another phone", "cross-site"];

    [Theory]
    [MemberData(nameof(Intruders))]
    public async Task ActionRoute_WithoutEverythingItNeeds_IsRefused(string intruder)
    {
        await using var page = await ServedPage.StartAsync();
        var phone = await page.PairAsync();
        var other = await page.PairAsync();
        var routes = page.Server.Routes.Where(route => route.Access == Access.Acting).ToArray();
        Assert.NotEmpty(routes);
        foreach (var route in routes)
        {
            using var request = Spoil(page, route, phone, other, intruder);
            using var answer = await page.Client.SendAsync(request);
            Assert.True(
                (int)answer.StatusCode is 401 or 403 or 404 or 405 or 415,
                $"{intruder} on {route.Path} gave {(int)answer.StatusCode}");
            Assert.Empty(page.Inbox.TakeAll());
        }
    }

    [Fact]
    public async Task PairedPhone_WithItsToken_ActsThroughTheInbox()
    {
        await using var page = await ServedPage.StartAsync();
        var phone = await page.PairAsync();
        using var answer = await page.Client.SendAsync(
            page.Ask(
                HttpMethod.Post, "/api/v1/actions", """{"action":"acknowledge","target":"coolant-loss"}""", phone));
        Assert.Equal(HttpStatusCode.Accepted, answer.StatusCode);
        Assert.Equal("acknowledge:coolant-loss", Assert.Single(page.Inbox.TakeAll()).ToString());
    }

    [Fact]
    public async Task ForgottenPhone_ActsNoMore()
    {
        await using var page = await ServedPage.StartAsync();
        var phone = await page.PairAsync();
        Assert.Equal(1, page.Server.Forget(""));
        using var answer = await page.Client.SendAsync(
            page.Ask(HttpMethod.Post, "/api/v1/actions", """{"action":"drained"}""", phone));
        Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
    }

    [Fact]
    public async Task EveryAnswer_BindsTheBrowserToThisPage()
    {
        await using var page = await ServedPage.StartAsync();
        foreach (var path in (string[])["/", "/review", "/assets/common.css", "/nowhere"])
        {
            using var answer = await page.Client.GetAsync(path);
            Assert.Contains("default-src 'self'", answer.Headers.GetValues("Content-Security-Policy").Single());
            Assert.Equal("nosniff", answer.Headers.GetValues("X-Content-Type-Options").Single());
        }
    }

    private static HttpRequestMessage Spoil(
        ServedPage page, Route route, (string Cookie, string Token) phone, (string Cookie, string Token) other,
        string intruder)
    {
        const string body = """{"action":"acknowledge"}""";
        var path = PathOf(route);
        var request = page.Ask(HttpMethod.Post, path, body, phone);
        switch (intruder)
        {
            case "no pairing":
                request.Headers.Remove("Cookie");
                break;
            case "wrong origin":
                request.Headers.Remove("Origin");
                request.Headers.Add("Origin", "http://evil.example");
                break;
            case "no origin":
                request.Headers.Remove("Origin");
                break;
            case "GET":
                request = page.Ask(HttpMethod.Get, path, null, phone);
                break;
            case "text body":
                request.Content = new StringContent(body);
                break;
            case "no token":
                request.Headers.Remove("X-Onboardheat-Token");
                break;
            case "token of another phone":
                request.Headers.Remove("X-Onboardheat-Token");
                request.Headers.Add("X-Onboardheat-Token", other.Token);
                break;
            case "cross-site":
                request.Headers.Add("Sec-Fetch-Site", "cross-site");
                break;
        }

        return request;
    }

    private static string PathOf(Route route) => route.Path.Replace("{name}", "common.css", StringComparison.Ordinal);
}
