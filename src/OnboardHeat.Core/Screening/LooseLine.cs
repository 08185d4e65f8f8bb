using OnboardHeat.Core.Scans;

namespace OnboardHeat.Core.Screening;

/// <summary>
/// Finds a flow or return probe that came off its pipe. It must never pass for a loss of coolant, and a loss of coolant
/// must never pass for it. What tells them apart: a bare probe falls towards the air much faster than any pipe, full or
/// empty, cools, and it falls alone; or it reads what no coolant could be while the coil goes on warming the tank. What
/// the tray or the partner say against it wins.
/// </summary>
internal sealed class LooseLine(Channel line, Channel partner)
{
    private readonly LineWindow _window = new();
    private readonly HeatingContradiction _contradiction = new(line);
    private double _circulatingSinceS = double.NaN;
    private double _backSinceS = double.NaN;
    private double _trayWarmedAtS = double.NegativeInfinity;
    private double _looseAtS;
    private double _partnerThen;
    private double _fellK;

    public Channel Line => line;

    public bool IsLoose { get; private set; }

    /// <summary>
    /// Looks at a scan whose readings were each judged by themselves. True while the line's probe is off its pipe.
    /// <paramref name="wasInOrder"/> says whether flow was seen above return in this run, as it is where probes are not
    /// exchanged.
    /// </summary>
    public bool Observe(ScreenedScan scan, bool wasInOrder)
    {
        var own = scan[line];
        var other = scan[partner];
        if (!own.IsGood || !other.IsGood)
        {
            _window.Clear();
            _contradiction.Forget();
            return IsLoose && own.IsGood;
        }

        var tank = TankReading.Of(scan);
        var air = scan[Channel.Surroundings];
        var tray = scan[Channel.Tray];
        _window.Add(new LineSample(
            scan.ElapsedS, own.Value, other.Value, tank.Count > 0 ? tank.Mean : double.NaN,
            tray.IsGood ? tray.Value : double.NaN));
        var isWet = IsTrayWarmed(scan.ElapsedS);
        var airCelsius = air.IsGood ? air.Value : ScreeningPolicy.AirAssumedCelsius;
        if (IsLoose)
        {
            IsLoose = !IsBack(own.Value, other.Value, airCelsius, scan.ElapsedS);
        }
        else if (IsCirculating(scan, other.Value) && !isWet
            && (FellAlone(own.Value, other.Value, tank, airCelsius, scan.ElapsedS)
                || _contradiction.Observe(scan, own.Value, other.Value, tank, airCelsius, wasInOrder)))
        {
            IsLoose = true;
            _looseAtS = scan.ElapsedS;
            _partnerThen = other.Value;
            _backSinceS = double.NaN;
        }

        return IsLoose;
    }

    private bool IsCirculating(ScreenedScan scan, double partnerCelsius)
    {
        var passes = scan[Signal.EngineRunning] != false && partnerCelsius >= ScreeningPolicy.WarmCoolantCelsius;
        _circulatingSinceS = !passes ? double.NaN
            : double.IsNaN(_circulatingSinceS) ? scan.ElapsedS : _circulatingSinceS;
        return passes && scan.ElapsedS - _circulatingSinceS >= ScreeningPolicy.CirculatingForS;
    }

    /// <summary>A fall faster than any pipe cools, while the partner, the tank and the tray stand.</summary>
    private bool FellAlone(double own, double other, TankReading tank, double airCelsius, double nowS)
    {
        _fellK = double.PositiveInfinity;
        for (var i = 0; i < _window.Count; i++)
        {
            var then = _window[i];
            var overS = nowS - then.AtS;
            var fellK = then.Line - own;
            var pipeK = (then.Line - airCelsius) * (1 - Math.Exp(-overS / ScreeningPolicy.LooseTimeConstantS));
            if (overS < ScreeningPolicy.LooseWindowLeastS || fellK < Math.Max(ScreeningPolicy.LooseFallK, pipeK))
            {
                continue;
            }

            var partnerMayK = Math.Min(ScreeningPolicy.LoosePartnerK, ScreeningPolicy.LoosePartnerShare * fellK);
            if (Math.Abs(other - then.Partner) <= partnerMayK && !(line == Channel.Return && IsDraw(own, tank, then)))
            {
                _fellK = fellK;
                return true;
            }
        }

        return false;
    }

    /// <summary>A draw cools the coil, and the return with it; but never below the coldest water.</summary>
    private static bool IsDraw(double own, TankReading tank, LineSample then) =>
        tank.Count > 0 && (own > tank.Coldest - ScreeningPolicy.StepSlackK || then.TankMean - tank.Mean > 1);

    /// <summary>
    /// Whether the tray has warmed within the last minutes: then coolant may be out, and no fall is put down to a
    /// probe.
    /// </summary>
    private bool IsTrayWarmed(double nowS)
    {
        var newest = _window[_window.Count - 1].Tray;
        for (var i = 0; i < _window.Count; i++)
        {
            // NaN (no tray) compares false: what is not fitted cannot speak against it.
            if (newest - _window[i].Tray > ScreeningPolicy.TrayRiseK)
            {
                _trayWarmedAtS = nowS;
            }
        }

        return nowS - _trayWarmedAtS <= ScreeningPolicy.TrayRememberedS;
    }

    private bool IsBack(double own, double other, double airCelsius, double nowS)
    {
        if (nowS - _looseAtS <= ScreeningPolicy.LooseFollowedWithinS
            && _partnerThen - other >= ScreeningPolicy.LooseFollowedShare * _fellK)
        {
            return true;
        }

        var agrees = other - airCelsius >= ScreeningPolicy.LooseFallK
            && own - airCelsius >= ScreeningPolicy.LooseBackShare * (other - airCelsius);
        _backSinceS = !agrees ? double.NaN : double.IsNaN(_backSinceS) ? nowS : _backSinceS;
        return agrees && nowS - _backSinceS >= ScreeningPolicy.LooseBackS;
    }
}
