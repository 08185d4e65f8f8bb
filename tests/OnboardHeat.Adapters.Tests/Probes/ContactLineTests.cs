using Microsoft.Extensions.Time.Testing;
using OnboardHeat.Adapters.Tests.Outputs;
using OnboardHeat.Core.Scans;
using OnboardHeat.Probes.Contacts;

namespace OnboardHeat.Adapters.Tests.Probes;

/// <summary>Contacts over the real controller of System.Device.Gpio with a driver of the tests' own.</summary>
public sealed class ContactLineTests : IDisposable
{
    private const int Pin = 17;

    private readonly FakeTimeProvider _time = new();
    private readonly FakeBoard _board = new();
    private readonly List<ContactBank> _banks = [];
    private int _changes;

    public void Dispose() => _banks.ForEach(bank => bank.Dispose());

    [Theory]
    [InlineData(false, true, true)]
    [InlineData(false, false, false)]
    [InlineData(true, true, false)]
    [InlineData(true, false, true)]
    public void FirstLook_CountsAtOnceByTheContactsOwnSense(bool isActiveLow, bool level, bool state)
    {
        _board.Drive(Pin, level);
        Assert.Equal(state, Read(Bank(isActiveLow)));
    }

    [Fact]
    public void LevelThatStands_ChangesTheSignalOnceAndSaysSo()
    {
        var bank = Bank();
        Assert.False(Read(bank));
        _board.Drive(Pin, true);
        Assert.False(Read(bank));
        _time.Advance(SteadyLevel.StandsFor);
        Assert.True(Read(bank));
        Assert.Equal(1, _changes);
    }

    [Fact]
    public void Bounce_IsNoChange()
    {
        var bank = Bank();
        Read(bank);
        for (var i = 0; i < 20; i++)
        {
            _board.Drive(Pin, i % 2 == 0);
            _time.Advance(TimeSpan.FromMilliseconds(20));
        }

        Assert.False(Read(bank));
        Assert.Equal(0, _changes);
    }

    [Fact]
    public void LineThatIsTaken_IsUnknownUntilItIsFree()
    {
        _board.Taken.Add(Pin);
        _board.Drive(Pin, true);
        var bank = Bank();
        Assert.Null(Read(bank));
        _board.Taken.Clear();
        Assert.True(Read(bank));
    }

    [Fact]
    public void NoChip_LeavesTheSignalUnknownAndIsLookedForAgain()
    {
        var opened = 0;
        var bank = new ContactBank(
            [new ContactFitting(Signal.EngineRunning, Pin, false)],
            () => ++opened < 2 ? throw new IOException("no chip") : _board.Open(), Changed, _time);
        _banks.Add(bank);
        Assert.Null(Read(bank));
        Assert.Null(Read(bank));
        Assert.Equal(1, opened);
        _time.Advance(ContactBank.RetryEvery);
        Assert.False(Read(bank));
    }

    private ContactBank Bank(bool isActiveLow = false)
    {
        var bank = new ContactBank(
            [new ContactFitting(Signal.EngineRunning, Pin, isActiveLow)], _board.Open, Changed, _time);
        _banks.Add(bank);
        return bank;
    }

    private void Changed() => Interlocked.Increment(ref _changes);

    private static bool? Read(ContactBank bank)
    {
        var scan = new Scan();
        bank.Read(scan);
        return scan[Signal.EngineRunning];
    }
}
