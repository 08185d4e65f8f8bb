using OnboardHeat.Core.Scans;
using OnboardHeat.Simulation;

namespace OnboardHeat.Daemon.Demo;

/// <summary>What was told and what was so, kept for the closing words.</summary>
internal sealed class DemoRecord(SimulatedVan van)
{
    private double _askAtS = double.NegativeInfinity;
    private bool _wasDrawing;

    /// <summary>Every alarm that was raised, in its order.</summary>
    public List<TimedAlarm> Told { get; } = [];

    /// <summary>When the hand-fitted hose first read its rating; null if it never did.</summary>
    public TimedFigure? HosePassedRating { get; private set; }

    /// <summary>The hottest that the hose's probe read, degrees Celsius.</summary>
    public double HoseMostCelsius { get; private set; } = double.NegativeInfinity;

    /// <summary>Minutes of shower told and true, every ten minutes.</summary>
    public List<(double Told, double True, double Low, double High)> Showers { get; } = [];

    /// <summary>The same when somebody began to shower.</summary>
    public (DateTimeOffset At, double Told, double True)? ShowerBegun { get; private set; }

    /// <summary>When coolant began to leave.</summary>
    public DateTimeOffset? FailedAt { get; private set; }

    /// <summary>The hottest coolant at the engine, degrees Celsius.</summary>
    public double EngineMostCelsius { get; private set; }

    /// <summary>The last moment seen.</summary>
    public DateTimeOffset Last { get; private set; }

    public void Observe(in DemoMoment moment)
    {
        var truth = moment.Truth;
        Last = moment.Time;
        EngineMostCelsius = Math.Max(EngineMostCelsius, truth.EngineCelsius);
        if (truth.Failure is { } failure)
        {
            FailedAt ??= van.Plan.Start.AddSeconds(failure.AtS);
        }

        foreach (var change in moment.Picture.Changes)
        {
            if (change.IsRaised)
            {
                Told.Add(new TimedAlarm(moment.Time, change, truth.CoolantLostLitres));
            }
        }

        var hose = moment.Picture[Channel.Flow];
        if (hose.IsGood)
        {
            HoseMostCelsius = Math.Max(HoseMostCelsius, hose.Value);
            if (hose.Value >= DemoDay.HoseMaxCelsius)
            {
                HosePassedRating ??= new TimedFigure(moment.Time, hose.Value);
            }
        }

        Compare(moment);
    }

    private void Compare(in DemoMoment moment)
    {
        var isDrawing = moment.Truth.DrawLitresPerMinute > 0;
        var begins = isDrawing && !_wasDrawing;
        _wasDrawing = isDrawing;
        if (!begins && moment.Truth.ElapsedS < _askAtS)
        {
            return;
        }

        var forecast = moment.Picture.Forecast;
        if (forecast is not { ShowerMinutes: { } told, ShowerMinutesLow: { } low, ShowerMinutesHigh: { } high })
        {
            return;
        }

        var shower = DemoDay.Description.Shower;
        var really = van.TrueShowerMinutes(shower.MixedCelsius, shower.FlowLitresPerMinute);
        Showers.Add((told, really, low, high));
        _askAtS = moment.Truth.ElapsedS + 600;
        if (begins)
        {
            ShowerBegun ??= (moment.Time, told, really);
        }
    }
}
