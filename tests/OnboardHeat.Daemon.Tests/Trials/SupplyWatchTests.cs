using Microsoft.Extensions.Time.Testing;
using OnboardHeat.Daemon.Tests.Support;
using OnboardHeat.Daemon.Trials;
using OnboardHeat.Engine;

namespace OnboardHeat.Daemon.Tests.Trials;

/// <summary>
/// The kernel's form: hwmon/hwmonN/name holds the driver's name, in0_lcrit_alarm 0 or 1 (Linux, raspberrypi-hwmon).
/// </summary>
public sealed class SupplyWatchTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly FakeTimeProvider _time = new();
    private readonly HouseStatus _house = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void FlagUp_IsALowSupply_ForHalfAMinuteAfterTheLastDip()
    {
        Device("hwmon0", "cpu_thermal", null);
        Device("hwmon1", "rpi_volt", "0");
        var watch = new SupplyWatch(_house, _time, _folder.Path);
        watch.Look();
        Assert.False(_house.Current.IsPowerLow);
        Device("hwmon1", "rpi_volt", "1");
        watch.Look();
        Assert.True(_house.Current.IsPowerLow);
        Device("hwmon1", "rpi_volt", "0");
        _time.Advance(TimeSpan.FromSeconds(20));
        watch.Look();
        Assert.True(_house.Current.IsPowerLow);
        _time.Advance(TimeSpan.FromSeconds(11));
        watch.Look();
        Assert.False(_house.Current.IsPowerLow);
    }

    [Fact]
    public void ComputerWithoutTheFlag_SaysNothing()
    {
        Device("hwmon0", "cpu_thermal", null);
        var watch = new SupplyWatch(_house, _time, _folder.Path);
        watch.Look();
        Assert.False(watch.IsThere);
        Assert.False(_house.Current.IsPowerLow);
        var nowhere = new SupplyWatch(_house, _time, Path.Combine(_folder.Path, "no-such"));
        nowhere.Look();
        Assert.False(nowhere.IsThere);
    }

    private void Device(string number, string name, string? flag)
    {
        var device = Directory.CreateDirectory(Path.Combine(_folder.Path, number)).FullName;
        File.WriteAllText(Path.Combine(device, "name"), name + "\n");
        if (flag is not null)
        {
            File.WriteAllText(Path.Combine(device, "in0_lcrit_alarm"), flag + "\n");
        }
    }
}
