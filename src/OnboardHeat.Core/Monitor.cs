using OnboardHeat.Core.Circuit;
using OnboardHeat.Core.Journeys;
using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Screening;
using OnboardHeat.Core.Shower;
using OnboardHeat.Core.Tank;
using OnboardHeat.Core.Watch;
using OnboardHeat.Core.Works;

namespace OnboardHeat.Core;

/// <summary>
/// The one way through the core: a scan goes in, a picture comes out. No clock, no input or output, no randomness: the
/// same scans give the same pictures. One instance serves one run; the next run's starts from what <see cref="Keep"/>
/// gave.
/// </summary>
public sealed class Monitor
{
    /// <summary>Seconds between two looks at when water will freeze: it moves by hours.</summary>
    private const double FrostEachS = 900;

    private readonly VanDescription _van;
    private readonly ForecastTiming _timing;
    private readonly ReadingScreen _screen;
    private readonly TankEstimator _tank;
    private readonly CircuitEstimator _circuit;
    private readonly ShowerForecaster _forecaster;
    private readonly JourneyFinder _journeys;
    private readonly AlarmBoard _board = new();
    private readonly IWatcher[] _watchers;
    private readonly WatchList _watching = new();
    private readonly WorksJob _works;
    private readonly TestDiary _tests;
    private WatchInput? _input;
    private IReadOnlyList<Journey> _ended = [];
    private Forecast _forecast = Shower.Forecast.Unknown;
    private double _elapsedS;
    private double _forecastAtS = double.NegativeInfinity;
    private double _frostAtS = double.NegativeInfinity;
    private bool _isDrained;

    /// <summary>A monitor for one van that goes on from what was kept.</summary>
    public Monitor(VanDescription van, KeptState kept, ForecastTiming timing = ForecastTiming.EveryTenSeconds)
    {
        ArgumentNullException.ThrowIfNull(van);
        ArgumentNullException.ThrowIfNull(kept);
        _van = van;
        _timing = timing;
        _screen = new ReadingScreen(van.Fitted);
        _tank = new TankEstimator(van, kept.Learnt.Tank, kept.Learnt.Circuit.CoilWPerK);
        _circuit = new CircuitEstimator(van, kept.Learnt.Circuit);
        _forecaster = new ShowerForecaster(van);
        _journeys = new JourneyFinder(van);
        _watchers = Watchers.All(van, _board, kept.Learnt);
        _isDrained = kept.IsDrained;
        _works = new WorksJob(kept);
        _tests = new TestDiary(kept.Tested);
        _board.Restore(kept.Alarms);
        if (kept.IsInWorks)
        {
            _board.SetWorks(true, 0);
        }
    }

    /// <summary>Takes a scan and gives the picture after it.</summary>
    /// <exception cref="ArgumentException">The scan's elapsed time lies before the last one's.</exception>
    public Picture Observe(Scan scan)
    {
        ArgumentNullException.ThrowIfNull(scan);
        var elapsedS = scan.Elapsed.TotalSeconds;
        if (elapsedS < _elapsedS)
        {
            throw new ArgumentException("Elapsed time went back within a run.", nameof(scan));
        }

        _elapsedS = elapsedS;
        Take(scan.Actions);
        var changes = Judge(scan);
        if (_timing == ForecastTiming.EveryTenSeconds && (elapsedS - _forecastAtS >= 10 || changes.Count > 0))
        {
            _forecast = Forecast();
            _forecastAtS = elapsedS;
        }

        return PictureOf(scan, changes);
    }

    /// <summary>The forecast for the state after the newest scan. Asking for it changes nothing.</summary>
    public Forecast Forecast() => _forecaster.Forecast(_elapsedS, _tank);

    /// <summary>The run is over: journeys that were still open end at its last scan.</summary>
    public IReadOnlyList<Journey> EndJourneys() => _journeys.End();

    /// <summary>What is to be kept over a restart.</summary>
    public KeptState Keep() => new()
    {
        Learnt = new LearntVan
        {
            Tank = _tank.Learnt(),
            Circuit = _circuit.Learnt() with { CoilWPerK = _tank.LearntCoilWPerK() },
        },
        Alarms = _board.Keep(_elapsedS),
        IsInWorks = _board.IsInWorks,
        WorksAgeS = _works.AgeS(_elapsedS),
        AsksWhatChanged = _works.AsksWhatChanged,
        Tested = _tests.Last,
        IsDrained = _isDrained,
    };

    /// <summary>The circuit with its signs, for trials that look inside.</summary>
    internal CircuitEstimator Circuit => _circuit;

    /// <summary>The judging alone, without making a picture: what costs no memory in a quiet scan.</summary>
    internal IReadOnlyList<AlarmChange> Judge(Scan scan)
    {
        var screened = _screen.Observe(scan);
        _tank.Observe(screened, _isDrained, _board.IsInWorks);
        _circuit.Loop.IsInWorks = _board.IsInWorks;
        _circuit.Observe(screened, _tank.Current);
        _works.Observe(_circuit.Loop);
        var input = _input ??= new WatchInput
        {
            Van = _van,
            Scan = screened,
            Loop = _circuit.Loop,
            Test = _circuit.Test,
        };
        input.Scan = screened;
        input.Tank = _tank.Current;
        input.Circuit = _circuit.Current;
        input.IsInWorks = _board.IsInWorks;
        _tests.Observe(scan);
        input.DaysSinceTest = _tests.DaysSince;
        input.WorksAgeS = _works.AgeS(screened.ElapsedS);
        input.IsDrained = _isDrained;
        if (screened.ElapsedS - _frostAtS >= FrostEachS)
        {
            _frostAtS = screened.ElapsedS;
            input.FrostInS = _forecaster.FrostInS(_elapsedS, _tank);
        }

        foreach (var watcher in _watchers)
        {
            watcher.Observe(input);
        }

        _ended = _journeys.Observe(screened, _tank.Current, _circuit.Current, _isDrained);
        return _board.Close(screened.ElapsedS);
    }

    private void Take(IReadOnlyList<PersonAction> actions)
    {
        for (var i = 0; i < actions.Count; i++)
        {
            var action = actions[i];
            _isDrained = action.Kind switch
            {
                ActionKind.Drained => true,
                ActionKind.Filled => false,
                _ => _isDrained,
            };
            _works.Take(action.Kind, _elapsedS);
            _tests.Take(action, _elapsedS);
            _tank.Take(action);
            _board.Take(action, _elapsedS);
        }
    }

    private Picture PictureOf(Scan scan, IReadOnlyList<AlarmChange> changes)
    {
        var readings = new ScreenedReading[Channels.Count];
        for (var i = 0; i < readings.Length; i++)
        {
            readings[i] = _input!.Scan[(Channel)i];
        }

        return new Picture
        {
            Run = scan.Run,
            Elapsed = scan.Elapsed,
            Utc = scan.Utc,
            IsUtcTrusted = scan.IsUtcTrusted,
            Readings = readings,
            Tank = _tank.Current,
            Circuit = _circuit.Current,
            Forecast = _forecast,
            Alarms = _board.Standing,
            Changes = changes,
            Journeys = _ended,
            Works = _works.Report(_elapsedS),
            Watching = _watching.After(_watchers),
        };
    }
}
