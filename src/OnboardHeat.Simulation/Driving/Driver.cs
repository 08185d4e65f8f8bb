using OnboardHeat.Simulation.Physics;

namespace OnboardHeat.Simulation.Driving;

/// <summary>
/// Drives the legs of a plan: speeds with lights and bends, gears, fuel. From the vehicle's equation of motion with
/// common coefficients (rolling 0.011, drag area 1.9 m2 for a high roof); no source beyond textbook mechanics.
/// </summary>
internal sealed class Driver
{
    private const double RollingShare = 0.011, DragAreaM2 = 1.9, AirKgPerM3 = 1.15;

    /// <summary>
    /// Fuel's heat to the wheels when pulling; what the engine burns to turn itself at 800 rpm, watts.
    /// </summary>
    private const double PullingShare = 0.36, IdleFuelW = 6_000;

    /// <summary>Top of each gear's use: km/h for each 1000 rpm.</summary>
    private static readonly double[] s_gearKmhPer1000Rpm = [8, 14.5, 23, 33, 43, 53];

    private readonly EngineTraits _traits;
    private readonly DrivePlan _plan;
    private readonly Chance _chance;
    private int _leg = -1;
    private double _legLeftS;
    private double _phaseLeftS;
    private double _wantedKmh;
    private double _bendPercent;
    private double _crankLeftS;
    private double _altitudeM;
    private double _speedKmh;
    private double _rpm;
    private double _stoppedS;
    private bool _wasOn;

    public Driver(EngineTraits traits, DrivePlan plan, Chance chance)
    {
        _traits = traits;
        _plan = plan;
        _chance = chance;
        _altitudeM = plan.AltitudeM;
        NextLeg();
    }

    /// <summary>The leg under way.</summary>
    public Leg Leg => _plan.Legs[_leg];

    /// <summary>Set when the driver has to give up: the engine is left off.</summary>
    public bool HasGivenUp { get; set; }

    /// <summary>Whether nothing fast can happen: the engine is off and stays so for the next step.</summary>
    public bool IsParked(double stepS) => (HasGivenUp || Leg.Kind == LegKind.Parked) && _legLeftS > stepS && !_wasOn;

    /// <summary>Goes on by a step.</summary>
    public RoadState Step(double stepS, double jacketCelsius)
    {
        _legLeftS -= stepS;
        while (_legLeftS < 0 && _leg < _plan.Legs.Count - 1)
        {
            NextLeg();
        }

        if (HasGivenUp || Leg.Kind == LegKind.Parked)
        {
            _speedKmh = 0;
            _rpm = 0;
            _wasOn = false;
            return new RoadState(false, false, 0, 0, 0, _altitudeM);
        }

        Choose(stepS);
        var accelerationMPerS2 = Accelerate(stepS);
        var metresPerS = _speedKmh / 3.6;
        var grade = (Leg.GradePercent + _bendPercent) / 100;
        _altitudeM += metresPerS * stepS * grade;
        _stoppedS = metresPerS < 0.1 ? _stoppedS + stepS : 0;
        var isOn = !(_traits.StopsAtLights && Leg.Kind == LegKind.Town && jacketCelsius > 60 && _stoppedS > 3);
        if (isOn && !_wasOn)
        {
            _crankLeftS = 1.2;
        }

        _wasOn = isOn;
        _crankLeftS -= stepS;
        if (!isOn)
        {
            _rpm = 0;
            return new RoadState(false, false, 0, 0, 0, _altitudeM);
        }

        var force = _traits.VanKg * (accelerationMPerS2 + (9.81 * (grade + (metresPerS > 0.1 ? RollingShare : 0))))
            + (AirKgPerM3 / 2 * DragAreaM2 * metresPerS * metresPerS);
        var pullW = force * metresPerS;
        Shift(stepS, pullW);
        var fuelW = pullW < 0 && _speedKmh > 8 ? 0 : (IdleFuelW * _rpm / 800) + (Math.Max(0, pullW) / PullingShare);
        return new RoadState(true, _crankLeftS > 0, _speedKmh, _rpm, fuelW, _altitudeM);
    }

    private void NextLeg()
    {
        _leg++;
        _legLeftS += Leg.Minutes * 60;
        _phaseLeftS = 0;
    }

    /// <summary>Chooses a new speed when the last one has been driven long enough.</summary>
    private void Choose(double stepS)
    {
        _phaseLeftS -= stepS;
        if (_phaseLeftS > 0)
        {
            return;
        }

        _phaseLeftS = _chance.Between(15, 70);
        _bendPercent = 0;
        switch (Leg.Kind)
        {
            case LegKind.Idle:
                _wantedKmh = 0;
                break;
            case LegKind.Town:
                var stops = _wantedKmh > 0 && _chance.Happens(0.55);
                _wantedKmh = stops ? 0 : _chance.Between(22, 52);
                _phaseLeftS = stops ? _chance.Between(6, 55) : _phaseLeftS;
                break;
            case LegKind.Country:
                _wantedKmh = _chance.Happens(0.06) ? 0 : _chance.Between(52, 88);
                _phaseLeftS = _wantedKmh == 0 ? _chance.Between(3, 15) : _phaseLeftS;
                _bendPercent = _chance.Between(-2.5, 2.5);
                break;
            case LegKind.Motorway:
                _wantedKmh = _chance.Between(92, 112);
                _bendPercent = _chance.Between(-1.5, 1.5);
                break;
            case LegKind.Climb:
                _wantedKmh = _chance.Between(30, 60);
                _bendPercent = _chance.Between(-2, 2);
                break;
            default:
                _wantedKmh = _chance.Between(30, 58);
                _bendPercent = _chance.Between(-2, 2);
                break;
        }
    }

    private double Accelerate(double stepS)
    {
        var before = _speedKmh;
        var most = 1.0 * 3.6 * stepS;
        _speedKmh += Math.Clamp(_wantedKmh - _speedKmh, -1.6 * most, most * Math.Max(0.25, 1 - (_speedKmh / 130)));
        _speedKmh = Math.Max(0, _speedKmh);
        return (_speedKmh - before) / 3.6 / stepS;
    }

    /// <summary>
    /// The highest gear that keeps the engine easy: 1400 rpm on the flat, more when it must pull or brake.
    /// </summary>
    private void Shift(double stepS, double pullW)
    {
        var least = Leg.Kind == LegKind.Descent ? 2100 : 1400 + Math.Clamp(pullW / 60, 0, 900);
        var wanted = 800.0;
        if (_speedKmh > 4)
        {
            wanted = Math.Max(900, _speedKmh / s_gearKmhPer1000Rpm[0] * 1000);
            for (var gear = s_gearKmhPer1000Rpm.Length - 1; gear > 0; gear--)
            {
                var rpm = _speedKmh / s_gearKmhPer1000Rpm[gear] * 1000;
                if (rpm >= least)
                {
                    wanted = rpm;
                    break;
                }
            }
        }

        _rpm += (Math.Min(3800, wanted) - _rpm) * stepS / (1.5 + stepS);
    }
}
