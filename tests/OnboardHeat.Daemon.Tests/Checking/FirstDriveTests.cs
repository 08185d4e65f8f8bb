using OnboardHeat.Core;
using OnboardHeat.Core.Scans;
using OnboardHeat.Engine;
using OnboardHeat.Engine.FirstDrive;

namespace OnboardHeat.Daemon.Tests.Checking;

public sealed class FirstDriveTests
{
    private static readonly VanDescription s_van = new()
    {
        Fitted = new FittedSet([Channel.TankTop, Channel.Flow, Channel.Return, Channel.Tray], [Signal.EngineRunning]),
    };

    private readonly Monitor _monitor = new(s_van, KeptState.Fresh, ForecastTiming.WhenAsked);
    private readonly FirstDriveList _list = new([]);
    private double _elapsedS;

    [Fact]
    public void DriveAsItShouldBe_TicksEveryStepInItsOrder()
    {
        // GIVEN a cold van WHEN the engine warms up: flow first, return after it, the tank slowly, the tray not at all.
        Drive(600, s => (Up(s, 15, 0.12, 0), Up(s, 15, 0.1, 120), 15, 15));
        Assert.Equal(["flow-first", "both-follow"], _list.Seen);
        Drive(1800, s => (85, 78, 15 + (0.01 * s), 17));
        Assert.Equal(["flow-first", "both-follow", "tank-rises", "tray-stays"], _list.Seen);
        Assert.Empty(_list.Doubts);
    }

    [Fact]
    public void ReturnThatWarmsFirst_IsDoubtedAndNotTicked()
    {
        Drive(300, s => (Up(s, 15, 0.1, 120), Up(s, 15, 0.12, 0), 15, 15));
        Assert.DoesNotContain("flow-first", _list.Seen);
        Assert.Contains("exchanged", _list.Doubts["flow-first"], StringComparison.Ordinal);
    }

    [Fact]
    public void EngineThatIsWarmAlready_TicksNothing()
    {
        Drive(1800, s => (70 + (0.01 * s), 65 + (0.01 * s), 60, 15));
        Assert.Empty(_list.Seen);
    }

    [Fact]
    public void TrayThatWarms_IsDoubted()
    {
        Drive(600, s => (Up(s, 15, 0.12, 0), Up(s, 15, 0.1, 120), 15, 15));
        Drive(1800, s => (85, 78, 15, 15 + Math.Min(30, 0.05 * s)));
        Assert.DoesNotContain("tray-stays", _list.Seen);
        Assert.StartsWith("the tray has risen by", _list.Doubts["tray-stays"], StringComparison.Ordinal);
    }

    [Fact]
    public void TankThatStaysCold_IsNotTicked()
    {
        Drive(600, s => (Up(s, 15, 0.12, 0), Up(s, 15, 0.1, 120), 15, 15));
        Drive(1200, s => (85, 78, 16, 16));
        Assert.DoesNotContain("tank-rises", _list.Seen);
    }

    [Theory]
    [InlineData(ActionKind.Changed, "hoses", true)]
    [InlineData(ActionKind.Changed, "probe/flow", true)]
    [InlineData(ActionKind.Repaired, "", true)]
    [InlineData(ActionKind.Changed, "insulation", false)]
    [InlineData(ActionKind.Note, "", false)]
    public void WorkOnTheCircuit_BeginsTheListAnew(ActionKind kind, string target, bool isAnew)
    {
        var list = new FirstDriveList(["flow-first", "tank-rises"]);
        var scan = new Scan { Actions = [new PersonAction(kind, target, "")] };
        Assert.Equal(isAnew, list.Observe(new Turn(scan, _monitor.Observe(scan))));
        Assert.Equal(isAnew ? 0 : 2, list.Seen.Count);
    }

    private static double Up(double s, double fromC, double kPerS, double afterS) =>
        Math.Min(88, fromC + (kPerS * Math.Max(0, s - afterS)));

    private void Drive(double seconds, Func<double, (double Flow, double Return, double Tank, double Tray)> at)
    {
        for (var s = 0.0; s < seconds; s += 2)
        {
            var (flow, back, tank, tray) = at(s);
            var scan = new Scan { Elapsed = TimeSpan.FromSeconds(_elapsedS) };
            scan[Channel.Flow] = Probe(flow);
            scan[Channel.Return] = Probe(back);
            scan[Channel.TankTop] = Probe(tank);
            scan[Channel.Tray] = Probe(tray);
            scan[Signal.EngineRunning] = true;
            _list.Observe(new Turn(scan, _monitor.Observe(scan)));
            _elapsedS += 2;
        }
    }

    /// <summary>On the grid of a DS18B20, 1/16 K (maker's data sheet).</summary>
    private static Reading Probe(double celsius) => Reading.Of(Math.Round(celsius * 16) / 16);
}
