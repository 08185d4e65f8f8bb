using CsCheck;
using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Screening;

namespace OnboardHeat.Core.Tests.Scans;

public sealed class ScanTests
{
    [Fact]
    public void NewScan_HasNoReadingsNoSignalsNoActions()
    {
        var scan = new Scan();
        Assert.All(Channels.All.ToArray(), channel => Assert.Equal(ReadingFault.Missing, scan[channel].Fault));
        Assert.All(Signals.All.ToArray(), signal => Assert.Null(scan[signal]));
        Assert.Empty(scan.Actions);
    }

    [Fact]
    public void Clear_TakesReadingsSignalsAndActionsBack_TimeStays()
    {
        var scan = new Scan
        {
            Elapsed = TimeSpan.FromSeconds(5),
            Actions = [new PersonAction(ActionKind.Drained, "", "")],
        };
        scan[Channel.Flow] = Reading.Of(80);
        scan[Signal.TrayWet] = true;
        scan.Clear();
        Assert.Equal(
            (ReadingFault.Missing, (bool?)null, 0),
            (scan[Channel.Flow].Fault, scan[Signal.TrayWet], scan.Actions.Count));
        Assert.Equal(TimeSpan.FromSeconds(5), scan.Elapsed);
    }

    [Fact]
    public void Copy_IsOutOfReachOfItsSource()
    {
        var scan = new Scan();
        scan[Channel.Flow] = Reading.Of(80);
        scan[Signal.EngineRunning] = true;
        var copy = scan.Copy();
        scan.Clear();
        Assert.Equal((80, true), (copy[Channel.Flow].Value, copy[Signal.EngineRunning]!.Value));
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    public void ReadingThatIsNoNumber_IsRefused(double value) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Reading.Of(value));

    // Contracts: channel and signal names are promises to files, topics and pages.
    [Fact]
    public void Names_AreThoseOfTheContract()
    {
        Assert.Equal(
            "tank_top tank_middle tank_bottom flow return surroundings tray outlet cold_supply engine_coolant",
            string.Join(' ', Channels.All.ToArray().Select(Channels.NameOf)));
        Assert.Equal(
            "engine_running tray_wet coolant_low valves_closed element_on",
            string.Join(' ', Signals.All.ToArray().Select(Signals.NameOf)));
        Assert.Equal(
            "acknowledge shelve works-begin works-end drained filled repaired changed note test",
            string.Join(' ', Enum.GetValues<ActionKind>().Select(PersonAction.NameOf)));
    }

    [Theory]
    [InlineData("changed:hoses", true)]
    [InlineData("changed:nothing", false)]
    [InlineData("drained", false)]
    public void ChangeMark_IsAChangeOfTheVan(string written, bool isMark)
    {
        Assert.True(PersonAction.TryParse(written, out var action));
        Assert.Equal(isMark, action.IsChangeMark);
    }

    [Fact]
    public void EveryName_IsFoundAgain_AndNoOther()
    {
        foreach (var channel in Channels.All)
        {
            Assert.True(Channels.TryParse(Channels.NameOf(channel), out var found));
            Assert.Equal(channel, found);
        }

        foreach (var signal in Signals.All)
        {
            Assert.True(Signals.TryParse(Signals.NameOf(signal), out var found));
            Assert.Equal(signal, found);
        }

        Assert.All((string[])["", "Flow", "flow ", "tank", "engine_running"], name => Assert.False(
            Channels.TryParse(name, out _)));
        Assert.All((string[])["", "wet", "flow"], name => Assert.False(Signals.TryParse(name, out _)));
    }

    [Theory]
    [InlineData("acknowledge", ActionKind.Acknowledge, "", "")]
    [InlineData("acknowledge:rating-near/heater-hose", ActionKind.Acknowledge, "rating-near/heater-hose", "")]
    [InlineData("shelve:frost:90", ActionKind.Shelve, "frost", "90")]
    [InlineData("changed:probe/flow:new clamp: tighter", ActionKind.Changed, "probe/flow", "new clamp: tighter")]
    [InlineData("note:two showers: one long", ActionKind.Note, "", "two showers: one long")]
    [InlineData("works-begin", ActionKind.WorksBegin, "", "")]
    public void WrittenAction_IsRead_AndWrittenBackTheSame(string written, ActionKind kind, string target, string text)
    {
        Assert.True(PersonAction.TryParse(written, out var action));
        Assert.Equal(new PersonAction(kind, target, text), action);
        Assert.Equal(written, action.ToString());
    }

    [Theory]
    [InlineData("")]
    [InlineData("acknowledged")]
    [InlineData("Works-begin")]
    [InlineData(":frost")]
    public void WordThatIsNoAction_IsRefused(string written) => Assert.False(PersonAction.TryParse(written, out _));

    [Fact]
    public void AnyTargetWithoutColonAndAnyText_SurviveWritingAndReading() =>
        Gen.Select(Gen.Enum<ActionKind>(), Gen.String[Gen.Char['a', 'z'], 0, 12], Gen.String[Gen.Char[' ', 'z'], 0, 20])
            .Sample(
            (kind, target, text) =>
            {
                var action = new PersonAction(kind, kind == ActionKind.Note ? "" : target, text);
                return PersonAction.TryParse(action.ToString(), out var read) && read == action;
            });

    [Fact]
    public void FittedSet_KnowsWhatIsThere()
    {
        var fitted = new FittedSet([Channel.TankMiddle, Channel.Flow], [Signal.TrayWet]);
        Assert.True(fitted.Has(Channel.Flow) && fitted.Has(Signal.TrayWet) && fitted.HasTankProbe);
        Assert.False(fitted.Has(Channel.TankTop) || fitted.Has(Signal.EngineRunning));
        Assert.False(new FittedSet([Channel.Flow], []).HasTankProbe);
    }
}
