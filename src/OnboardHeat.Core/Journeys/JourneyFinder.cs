using OnboardHeat.Core.Circuit;
using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Screening;
using OnboardHeat.Core.Tank;

namespace OnboardHeat.Core.Journeys;

/// <summary>
/// Finds the journeys of a run. Heating runs, rests (short ones are stops, long ones standing spells) and draws are
/// followed beside each other; a draw may lie within a heating run, and it ends a standing spell, because a comparison
/// of losses must not meet one.
/// </summary>
internal sealed class JourneyFinder(VanDescription van)
{
    /// <summary>
    /// Heat that makes a heating run begin and that keeps it going, watts: a coil gives several hundred, a tank loses
    /// 30.
    /// </summary>
    private const double HeatsW = 150, StillHeatsW = 40;

    /// <summary>
    /// A heating run outlives lights and slow stretches: it ends when nothing has come for this long, seconds.
    /// </summary>
    private const double HeatingGapS = 300;

    /// <summary>
    /// With engine and element off it ends after this long: longer than engines that stop by themselves rest at lights,
    /// seconds.
    /// </summary>
    private const double SourceGapS = 60;

    /// <summary>
    /// Heat that leaves with a draw, and with one that has ended, watts: a hand wash of 1 L/min takes some 2 kW, a cold
    /// coil after a start takes up to 1.5 kW for a minute.
    /// </summary>
    private const double DrawsW = 1_800, StillDrawsW = 500;

    /// <summary>A draw with a pause to soap is one draw, seconds.</summary>
    private const double DrawGapS = 60;

    /// <summary>
    /// Heat a draw takes on the whole, W: a thin trickle of hot water takes as much, circulation through open valves
    /// does not.
    /// </summary>
    private const double DrawsOnTheWholeW = 1_500;

    /// <summary>
    /// An estimate that knows nothing yet moves for some minutes of its own accord: that is neither a draw nor a loss.
    /// </summary>
    private const double SettlesS = 600;

    /// <summary>Shorter rests are stops, longer ones standing spells; rests at lights are neither. Seconds.</summary>
    private const double StopS = 90, StandingS = 1_800;

    /// <summary>A gap in the scans this long ends whatever was open, seconds.</summary>
    private const double GapS = 900;

    private readonly JourneyTally _heating = new(JourneyType.Heating, van);
    private readonly JourneyTally _resting = new(JourneyType.Standing, van);
    private readonly JourneyTally _drawing = new(JourneyType.Draw, van);
    private readonly HeatSlope _minutes = new(30, 150);
    private readonly HeatSlope _seconds = new(6, 24);
    private List<Journey>? _ended;
    private double _heatedAtS;
    private double _sourceAtS;
    private double _drewAtS;
    private bool _hasDriven;
    private int _run;

    /// <summary>Takes a scan; gives the journeys that it ended, usually none (the empty list is shared).</summary>
    public IReadOnlyList<Journey> Observe(ScreenedScan scan, TankEstimate tank, CircuitEstimate circuit, bool isDrained)
    {
        _ended = null;
        _run = scan.Run;
        if (!tank.IsKnown || isDrained)
        {
            CloseAll();
            return Ended();
        }

        if (scan.StepS > GapS)
        {
            CloseAll();
        }

        _minutes.Observe(scan.StepS, tank.StoredJ.Value);
        _seconds.Observe(scan.StepS, tank.StoredJ.Value);
        var isEngineOn = circuit.IsEngineRunning == true;
        Draw(scan, tank, isEngineOn);
        Heat(scan, tank, isEngineOn);
        Rest(scan, tank, isEngineOn);
        _hasDriven |= isEngineOn;
        return Ended();
    }

    /// <summary>The run is over: whatever is open ends at its last scan.</summary>
    public IReadOnlyList<Journey> End()
    {
        _ended = null;
        CloseAll();
        return Ended();
    }

    private void Draw(ScreenedScan scan, TankEstimate tank, bool isEngineOn)
    {
        // What the circuit takes out is no draw.
        var drawnW = -_seconds.W + Math.Min(0, tank.HeatingW.Value);
        if (drawnW > (_drawing.IsOpen ? StillDrawsW : DrawsW))
        {
            _drewAtS = scan.ElapsedS;
        }

        if (!_drawing.IsOpen && _drewAtS == scan.ElapsedS && drawnW > DrawsW && scan.ElapsedS > SettlesS)
        {
            _drawing.Open(Math.Max(0, scan.ElapsedS - _seconds.LagS), scan.ElapsedS, tank, _seconds.BeforeJ);
        }
        else if (_drawing.IsOpen)
        {
            _drawing.Add(scan, tank, isEngineOn);
            if (scan.ElapsedS - _drewAtS > DrawGapS)
            {
                var draw = _drawing.Close(scan.Run, van.Fitted, JourneyEnd.ByItself);

                // What goes out slowly on the whole is circulation through open valves, seen in steps by the probes:
                // the rest goes on.
                if (-draw.MeanWatts > DrawsOnTheWholeW)
                {
                    EndRest(isDrivenAfter: false, JourneyEnd.Draw);
                    End(draw);
                }
            }
        }
    }

    private void Heat(ScreenedScan scan, TankEstimate tank, bool isEngineOn)
    {
        var hasSource = isEngineOn || scan[Signal.ElementOn] == true
            || (!van.Fitted.Has(Signal.EngineRunning) && _minutes.W > HeatsW);
        _sourceAtS = hasSource ? scan.ElapsedS : _sourceAtS;
        if (hasSource && !_drawing.IsOpen && _minutes.W > (_heating.IsOpen ? StillHeatsW : HeatsW))
        {
            if (!_heating.IsOpen)
            {
                _heating.Open(Math.Max(0, scan.ElapsedS - _minutes.LagS), scan.ElapsedS, tank, _minutes.BeforeJ);
            }

            _heatedAtS = scan.ElapsedS;
        }

        if (!_heating.IsOpen)
        {
            return;
        }

        // A draw while the engine is off ends it at once: what the draw takes is no part of what was gained.
        var isOver = _drawing.IsOpen ? !hasSource
            : scan.ElapsedS - _heatedAtS > HeatingGapS || scan.ElapsedS - _sourceAtS > SourceGapS;
        if (!isOver)
        {
            _heating.Add(scan, tank, isEngineOn);
        }
        else
        {
            End(_heating.Close(scan.Run, van.Fitted, _drawing.IsOpen ? JourneyEnd.Draw : JourneyEnd.ByItself));
        }
    }

    private void Rest(ScreenedScan scan, TankEstimate tank, bool isEngineOn)
    {
        var isResting = !isEngineOn && scan[Signal.ElementOn] != true
            && (van.Fitted.Has(Signal.EngineRunning) || !_heating.IsOpen);
        if (isResting && _drawing.IsOpen)
        {
            // Whether this is a draw shows when it ends.
            return;
        }

        if (isResting && (!_resting.IsOpen || scan.ElapsedS < SettlesS))
        {
            _resting.Open(_resting.IsOpen ? _resting.FromS : scan.ElapsedS, scan.ElapsedS, tank, tank.StoredJ.Value);
        }
        else if (isResting)
        {
            _resting.Add(scan, tank, isEngineOn);
        }
        else
        {
            EndRest(isEngineOn, EndOf(scan, isEngineOn));
        }
    }

    private JourneyEnd EndOf(ScreenedScan scan, bool isEngineOn) =>
        _drawing.IsOpen ? JourneyEnd.Draw : isEngineOn ? JourneyEnd.Engine
        : scan[Signal.ElementOn] == true ? JourneyEnd.Element : JourneyEnd.ByItself;

    private void EndRest(bool isDrivenAfter, JourneyEnd end)
    {
        if (!_resting.IsOpen)
        {
            return;
        }

        var lengthS = _resting.LastS - _resting.FromS;
        var isStop = lengthS is >= StopS and < StandingS && isDrivenAfter && _hasDriven;
        var journey = _resting.Close(_run, van.Fitted, end, lengthS < StandingS ? JourneyType.Stop : null);
        if (lengthS >= StandingS || isStop)
        {
            End(journey);
        }
    }

    private void CloseAll()
    {
        if (_drawing.IsOpen)
        {
            End(_drawing.Close(_run, van.Fitted, JourneyEnd.RecordEnd));
        }

        if (_heating.IsOpen)
        {
            End(_heating.Close(_run, van.Fitted, JourneyEnd.RecordEnd));
        }

        EndRest(isDrivenAfter: false, JourneyEnd.RecordEnd);
    }

    private void End(Journey journey)
    {
        if (journey.ToS > journey.FromS)
        {
            (_ended ??= []).Add(journey);
        }
    }

    private IReadOnlyList<Journey> Ended() => (IReadOnlyList<Journey>?)_ended ?? [];
}
