using System.Text;

namespace OnboardHeat.Limits.Page;

/// <summary>Requests by number: the same seed and number give the same bytes.</summary>
internal sealed class FuzzedRequests(Uri address, (string Cookie, string Token) phone, int seed)
{
    private static readonly string[] s_methods =
    [
        "GET", "GET", "GET", "GET", "GET", "POST", "POST", "POST", "POST", "POST", "PUT", "DELETE", "HEAD", "OPTIONS",
        "TRACE", "PATCH", "get", "G\0T", "",
    ];

    private static readonly string[] s_paths =
    [
        "/", "/review", "/pair", "/assets/glance.js", "/assets/", "/assets/../../etc/passwd",
        "/assets/%2e%2e%2fphones.json", "/api/v1/session",
        "/api/v1/picture", "/api/v1/live", "/api/v1/chart", "/api/v1/events", "/api/v1/runs", "/api/v1/pair",
        "/api/v1/actions",
        "/api/v1/openapi.json", "/api/v1/journeys", "/api/v1/compare", "/api/v1/report", "/api/v1/insulation",
        "/compare",
        "/api/v1/download/readings.csv", "/api/v1/download/..%2fphones.json", "/api/v2", "//", "/%00", "/%ff%fe", "*",
        "http://elsewhere.example/", "/\u00e9", "/..;/", "?", "/api/v1/actions/", "/API/V1/PICTURE",
    ];

    private static readonly string[] s_values =
    [
        "", "0", "-1", "1e308", "NaN", "Infinity", "9999999999999999999", "2026-05-28T09:12:41Z",
        "2026-13-99T99:99:99Z", "0001-01-01T00:00:00Z",
        "9999-12-31T23:59:59Z", "tank_top", "tank_top,flow,return", ",,,", "%00", "%ff", "<script>", "1 OR 1=1",
        "../../../etc/passwd", "true", "null",
    ];

    private static readonly string[] s_names = [
        "from", "to", "columns", "channels", "points", "run", "a", "b", "since", "at", "share", "undated"];

    private static readonly string[] s_bodies =
    [
        "", "{}", "[]", "null", "0", "\"", "{", "{\"code\":", "{\"code\":12345678}", "{\"code\":\"00000000\"}",
        "{\"action\":null}",
        "{\"action\":\"acknowledge\",\"target\":\"nobody\"}", "{\"action\":\"note\",\"text\":\"</script><b>\"}",
        "{\"action\":\"note\",\"text\":\"\\ud800\"}", "{\"action\":\"shelve\",\"target\":\"frost\",\"text\":\"1e999\"}",
        "{\"action\":\"changed\",\"target\":\"probe/x\"}", "{\"action\":\"acknowledge\",\"action\":\"note\"}",
        "\ufeff{}", "{\"a\":{\"a\":{\"a\":{\"a\":{\"a\":1}}}}}",
    ];

    public byte[] Make(int number)
    {
        var random = new Random(unchecked((seed * 1_000_003) + number));
        var body = Body(random);
        var text = new StringBuilder();
        text.Append(Pick(random, s_methods)).Append(' ').Append(Pick(random, s_paths)).Append(Query(random));
        text.Append(random.Next(40) == 0 ? " HTTP/9.9" : " HTTP/1.1").Append(random.Next(60) == 0 ? "\n" : "\r\n");
        Header(text, random, "Host", 20, address.Authority, "elsewhere.example");
        Header(text, random, "Origin", 4, address.GetLeftPart(UriPartial.Authority), "http://elsewhere.example");
        Header(text, random, "Cookie", 3, phone.Cookie, "onboardheat-phone=0");
        Header(text, random, "X-Onboardheat-Token", 3, phone.Token, "0");
        Header(text, random, "Content-Type", 4, "application/json", "text/plain");
        Header(text, random, "Accept-Encoding", 2, "br", "identity;q=x");
        if (random.Next(30) == 0)
        {
            text.Append("Transfer-Encoding: chunked\r\n");
        }

        if (random.Next(40) == 0)
        {
            text.Append("X-Long: ").Append('x', random.Next(40_000)).Append("\r\n");
        }

        text.Append("Content-Length: ").Append(random.Next(20) == 0 ? random.Next(-5, 100_000) : body.Length)
            .Append("\r\nConnection: close\r\n\r\n");
        return [.. Encoding.Latin1.GetBytes(text.ToString()), .. body];
    }

    private static void Header(StringBuilder text, Random random, string name, int oftenOf, string good, string bad)
    {
        var draw = random.Next(oftenOf + 2);
        if (draw > 0)
        {
            text.Append(name).Append(": ").Append(draw > 1 ? good : bad).Append("\r\n");
        }
    }

    private static byte[] Body(Random random)
    {
        var bytes = Encoding.UTF8.GetBytes(Pick(random, s_bodies));
        for (var flips = random.Next(4) == 0 ? random.Next(1, 4) : 0; flips > 0 && bytes.Length > 0; flips--)
        {
            bytes[random.Next(bytes.Length)] = (byte)random.Next(256);
        }

        return random.Next(50) == 0 ? new byte[random.Next(40_000)] : bytes;
    }

    private static string Query(Random random)
    {
        var count = random.Next(2) == 0 ? 0 : random.Next(1, 5);
        var parts = Enumerable.Range(0, count)
            .Select(_ => $"{Pick(random, s_names)}={Pick(random, s_values)}").ToArray();
        return parts.Length == 0 ? "" : "?" + string.Join('&', parts);
    }

    private static string Pick(Random random, string[] from) => from[random.Next(from.Length)];
}
