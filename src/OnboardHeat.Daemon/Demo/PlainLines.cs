using System.Globalization;
using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Watch;

namespace OnboardHeat.Daemon.Demo;

/// <summary>The demo where there is no terminal: a line for every alarm, and one each ten minutes of the day.</summary>
internal sealed class PlainLines : IDemoView
{
    private const double EveryS = 600;

    private readonly TextWriter _to;
    private double _nextS;

    public PlainLines(TextWriter to, string notice)
    {
        _to = to;
        if (notice.Length > 0)
        {
            _to.WriteLine(notice);
            _to.Flush();
        }
    }

    public void Observe(in DemoMoment moment)
    {
        foreach (var change in moment.Picture.Changes)
        {
            var subject = change.Subject.Length == 0 ? "" : "/" + change.Subject;
            _to.WriteLine(change.IsRaised
                ? $"{Words.Clock(moment.Time)}  {Urgency(change.Definition.Priority)} "
                    + $"{change.Definition.Name}{subject}: {change.Because}"
                : $"{Words.Clock(moment.Time)}  over: {change.Definition.Name}{subject}");
            if (change is { IsRaised: true, Definition.Priority: AlarmPriority.Critical })
            {
                WriteSteps(moment, change);
            }
        }

        if (moment.Truth.ElapsedS >= _nextS)
        {
            _nextS = moment.Truth.ElapsedS + EveryS;
            _to.WriteLine($"{Words.Clock(moment.Time)}  {Words.Road(moment.Truth)}; {Water(moment)}");
        }

        _to.Flush();
    }

    public void Show(in DemoMoment moment, double speed)
    {
    }

    public void Dispose()
    {
    }

    private static string Urgency(AlarmPriority priority) => priority switch
    {
        AlarmPriority.Critical => "CRITICAL",
        AlarmPriority.Warning => "warning",
        _ => "advice",
    };

    private static string Water(in DemoMoment moment)
    {
        var forecast = moment.Picture.Forecast;
        var tank = moment.Picture.Tank;
        var flow = moment.Picture[Channel.Flow];
        var minutes = forecast.ShowerMinutes is { } m
            ? string.Create(
                CultureInfo.InvariantCulture,
                $"shower {m:0.0} min ({forecast.ShowerMinutesLow:0.0} to {forecast.ShowerMinutesHigh:0.0})")
            : "shower not known";
        var middle = tank.IsKnown
            ? $", tank {Words.Celsius(tank.BottomCelsius.Value)} to {Words.Celsius(tank.TopCelsius.Value)}" : "";
        var coolant = flow.IsGood ? $", coolant {Words.Celsius(flow.Value)}" : "";
        return $"{minutes}{middle}{coolant}. {Words.Shower(moment.Picture, moment.Time)}";
    }

    private void WriteSteps(in DemoMoment moment, AlarmChange change)
    {
        foreach (var alarm in moment.Picture.Alarms)
        {
            if (alarm.Definition.Kind == change.Definition.Kind && alarm.Subject == change.Subject)
            {
                for (var i = 0; i < alarm.WhatToDo.Count; i++)
                {
                    _to.WriteLine($"          {i + 1}. {alarm.WhatToDo[i]}");
                }
            }
        }
    }
}
