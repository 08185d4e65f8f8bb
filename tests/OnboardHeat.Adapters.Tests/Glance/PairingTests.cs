using System.Net;
using Microsoft.Extensions.Time.Testing;
using OnboardHeat.Glance.Guard;

namespace OnboardHeat.Adapters.Tests.Glance;

public sealed class PairingTests
{
    private static readonly IPAddress s_owner = IPAddress.Parse("192.168.8.20");

    private readonly FakeTimeProvider _time = new();

    [Fact]
    public void Code_WorksOnce()
    {
        var desk = new PairingDesk(_time);
        var code = desk.NewCode();
        Assert.True(desk.Redeem(code, s_owner, out _));
        Assert.False(desk.Redeem(code, s_owner, out _));
    }

    [Fact]
    public void Code_OlderThanItsLife_DoesNotWork()
    {
        var desk = new PairingDesk(_time);
        var code = desk.NewCode();
        _time.Advance(PairingDesk.CodeLife + TimeSpan.FromSeconds(1));
        Assert.False(desk.Redeem(code, s_owner, out _));
    }

    [Fact]
    public void TenAddressesGuessingWithoutEnd_GetFewTries_AndNeverKeepTheOwnerOut()
    {
        var desk = new PairingDesk(_time);
        var code = desk.NewCode();
        var counted = 0;
        for (var tick = 0; tick < PairingDesk.CodeLife.TotalSeconds * 10 - 10; tick++)
        {
            for (var address = 1; address <= 10; address++)
            {
                desk.Redeem("00000000", new IPAddress([10, 0, 0, (byte)address]), out var wait);
                counted += wait == TimeSpan.Zero ? 1 : 0;
            }

            _time.Advance(TimeSpan.FromSeconds(0.1));
        }

        Assert.InRange(counted, 100, 170);
        Assert.True(desk.Redeem(code, s_owner, out var refusedFor), $"the owner waits {refusedFor}");
    }

    [Fact]
    public void OwnerWhoMistypes_WaitsALittleLongerEachTime_AndThenIsLetIn()
    {
        var desk = new PairingDesk(_time);
        var code = desk.NewCode();
        var last = TimeSpan.Zero;
        for (var wrong = 0; wrong < 4; wrong++)
        {
            desk.Redeem("1", s_owner, out _);
            Assert.False(desk.Redeem(code, s_owner, out var wait));
            Assert.True(wait > last, $"{wait} after {last}");
            last = wait;
            _time.Advance(wait);
        }

        Assert.InRange(last.TotalSeconds, 1, 10);
        Assert.True(desk.Redeem(code, s_owner, out _));
    }

    [Fact]
    public void FloodOfAddresses_SharesOneWait_AndAnIPv6NeighbourhoodIsOne()
    {
        var desk = new PairingDesk(_time);
        var counted = 0;
        for (var address = 0; address < 5000; address++)
        {
            desk.Redeem("0", new IPAddress([10, 1, (byte)(address >> 8), (byte)address]), out var wait);
            counted += wait == TimeSpan.Zero ? 1 : 0;
        }

        Assert.InRange(counted, PairingDesk.MostAddresses, PairingDesk.MostAddresses + 1);
        var six = new PairingDesk(_time);
        six.Redeem("0", IPAddress.Parse("fe80::1"), out _);
        six.Redeem("0", IPAddress.Parse("fe80::2"), out var neighbour);
        Assert.True(neighbour > TimeSpan.Zero);
    }

    [Fact]
    public async Task WrongCode_OverTheWire_IsToldToWaitOrRefused()
    {
        await using var page = await ServedPage.StartAsync(time: _time);
        page.Server.NewCode();
        using var first = await page.Client.SendAsync(page.Ask(HttpMethod.Post, "/api/v1/pair", """{"code":"12"}"""));
        using var second = await page.Client.SendAsync(page.Ask(HttpMethod.Post, "/api/v1/pair", """{"code":"13"}"""));
        Assert.Equal(HttpStatusCode.Forbidden, first.StatusCode);
        Assert.Equal(HttpStatusCode.TooManyRequests, second.StatusCode);
        Assert.NotNull(second.Headers.RetryAfter);
    }

    [Fact]
    public void PhoneBook_OnDisk_HoldsHashesOnly_AndIsReadByItsOwnerOnly()
    {
        var folder = Directory.CreateTempSubdirectory();
        try
        {
            var path = Path.Combine(folder.FullName, "phones.json");
            var (phone, cookie, token) = new PhoneBook(path).Add("mine", DateTimeOffset.UnixEpoch);
            var text = File.ReadAllText(path);
            Assert.DoesNotContain(cookie, text);
            Assert.DoesNotContain(token, text);
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(path));
            Assert.Equal(phone.Id, new PhoneBook(path).ByCookie(cookie)!.Id);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    [Fact]
    public void PhoneBook_ThatCannotBeWritten_SaysWhy_AndKnowsThePhoneStill()
    {
        var file = Path.GetTempFileName();
        var book = new PhoneBook(Path.Combine(file, "phones.json"));
        var (phone, cookie, _) = book.Add("mine", DateTimeOffset.UnixEpoch);
        Assert.NotNull(book.Trouble);
        Assert.Equal(phone, book.ByCookie(cookie));
        File.Delete(file);
    }

    [Fact]
    public async Task PairedPhone_GetsACookieThatNoScriptAndNoOtherSiteCanUse()
    {
        await using var page = await ServedPage.StartAsync();
        var code = page.Server.NewCode().Code;
        using var answer = await page.Client.SendAsync(
            page.Ask(HttpMethod.Post, "/api/v1/pair", $$"""{"code":"{{code}}"}"""));
        var cookie = answer.Headers.GetValues("Set-Cookie").Single();
        Assert.Contains("httponly", cookie);
        Assert.Contains("samesite=strict", cookie);
        Assert.DoesNotContain("secure", cookie);
    }

    [Fact]
    public async Task BodyBeyondItsLimit_IsRefused()
    {
        await using var page = await ServedPage.StartAsync();
        var body = $$"""{"code":"{{new string('1', 20_000)}}"}""";
        using var answer = await page.Client.SendAsync(page.Ask(HttpMethod.Post, "/api/v1/pair", body));
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
    }

    [Fact]
    public void PhoneBook_Damaged_IsAnEmptyOne()
    {
        var path = Path.GetTempFileName();
        File.WriteAllText(path, "{ not json");
        Assert.Empty(new PhoneBook(path).All);
        File.Delete(path);
    }
}
