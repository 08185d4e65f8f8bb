using System.Net;
using Microsoft.Extensions.Time.Testing;
using OnboardHeat.Glance.Guard;

namespace OnboardHeat.Adapters.Tests.Glance;

public sealed class PairingTests
{
    private readonly FakeTimeProvider _time = new();

    [Fact]
    public void Code_WorksOnce()
    {
        var desk = new PairingDesk(_time);
        var code = desk.NewCode();
        Assert.True(desk.Redeem(code, out _));
        Assert.False(desk.Redeem(code, out _));
    }

    [Fact]
    public void Code_OlderThanItsLife_DoesNotWork()
    {
        var desk = new PairingDesk(_time);
        var code = desk.NewCode();
        _time.Advance(PairingDesk.CodeLife + TimeSpan.FromSeconds(1));
        Assert.False(desk.Redeem(code, out _));
    }

    [Fact]
    public void WrongCodes_SlowEverybodyDown_AndNeverLockOut()
    {
        var desk = new PairingDesk(_time);
        var code = desk.NewCode();
        var counted = 0;
        for (var second = 0; second < 200; second++)
        {
            // Ten addresses at once: they share one wait.
            for (var address = 0; address < 10; address++)
            {
                desk.Redeem("00000000", out var refusedFor);
                counted += refusedFor == TimeSpan.Zero ? 1 : 0;
            }

            _time.Advance(TimeSpan.FromSeconds(1));
        }

        Assert.InRange(counted, 5, 40);
        _time.Advance(PairingDesk.LongestWait);
        Assert.True(desk.Redeem(code, out var wait), $"still waits {wait}");
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
    public void PhoneBook_Damaged_IsAnEmptyOne()
    {
        var path = Path.GetTempFileName();
        File.WriteAllText(path, "{ not json");
        Assert.Empty(new PhoneBook(path).All);
        File.Delete(path);
    }
}
