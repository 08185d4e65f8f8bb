using Microsoft.Extensions.Time.Testing;
using OnboardHeat.Probes.OneWire;

namespace OnboardHeat.Adapters.Tests.Probes;

public sealed class PatientCallTests : IDisposable
{
    private static readonly TimeSpan s_patience = TimeSpan.FromSeconds(2.5);

    private readonly FakeTimeProvider _time = new();
    private readonly ManualResetEventSlim _release = new();
    private readonly PatientCall<int> _call;
    private volatile bool _hangs;
    private int _calls;

    public PatientCallTests() => _call = new PatientCall<int>("test", Answer, s_patience, _time);

    public void Dispose()
    {
        _release.Set();
        _call.Dispose();
    }

    [Fact]
    public async Task AnswerInTime_IsGiven() => Assert.Equal(1, await _call.AskAsync(-1));

    [Fact]
    public async Task CallThatHangs_IsAnsweredOtherwiseAfterThePatience()
    {
        _hangs = true;
        Assert.Equal(-1, await AskThroughTimeAsync());
    }

    [Fact]
    public async Task WhileOneHangs_TheNextIsAnsweredAtOnceAndAsksNobody()
    {
        _hangs = true;
        await AskThroughTimeAsync();
        // No time passes here: a call that waited for anything would never end.
        Assert.Equal(-1, await _call.AskAsync(-1));
        Assert.Equal(1, Volatile.Read(ref _calls));
    }

    [Fact]
    public async Task HungForLong_IsSetAsideAndAFreshThreadAnswers()
    {
        _hangs = true;
        await AskThroughTimeAsync();
        _hangs = false;
        _time.Advance(PatientCall<int>.SetAsideAfter);
        Assert.Equal(2, await _call.AskAsync(-1));
        Assert.Equal(1, _call.SetAside);
    }

    [Fact]
    public async Task HungThreads_AreBounded()
    {
        _hangs = true;
        for (var i = 0; i < 20; i++)
        {
            await AskThroughTimeAsync();
            _time.Advance(PatientCall<int>.SetAsideAfter);
        }

        Assert.Equal(PatientCall<int>.SetAsideMax, _call.SetAside);
        // On a busy machine a thread may be set aside before it has begun: fewer calls are in order, more are not.
        Assert.InRange(Volatile.Read(ref _calls), 1, PatientCall<int>.SetAsideMax + 1);
    }

    [Fact]
    public async Task ThreadsThatComeBack_AreForgottenAndTheCallWorksAgain()
    {
        _hangs = true;
        await AskThroughTimeAsync();
        _time.Advance(PatientCall<int>.SetAsideAfter);
        await AskThroughTimeAsync();
        _hangs = false;
        _release.Set();
        while (await _call.AskAsync(-1) == -1)
        {
            await Task.Yield();
        }

        while (_call.SetAside > 0)
        {
            await _call.AskAsync(-1);
        }

        Assert.True(await _call.AskAsync(-1) > 0);
    }

    [Fact]
    public async Task BugInTheCall_ReachesWhoeverAsked()
    {
        using var broken = new PatientCall<int>(
            "broken", static () => throw new InvalidCastException("a bug"), s_patience, _time);
        await Assert.ThrowsAsync<InvalidCastException>(() => broken.AskAsync(-1));
    }

    private int Answer()
    {
        var number = Interlocked.Increment(ref _calls);
        if (_hangs)
        {
            _release.Wait();
        }

        return number;
    }

    private async Task<int> AskThroughTimeAsync()
    {
        var asked = _call.AskAsync(-1);
        while (!asked.IsCompleted)
        {
            _time.Advance(TimeSpan.FromSeconds(0.5));
            await Task.Yield();
        }

        return await asked;
    }
}
