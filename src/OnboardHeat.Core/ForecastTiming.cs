namespace OnboardHeat.Core;

/// <summary>When a monitor works out its forecasts. It changes what a picture shows, never what is judged.</summary>
public enum ForecastTiming
{
    /// <summary>Every ten seconds, and when an alarm comes or goes.</summary>
    EveryTenSeconds,

    /// <summary>Only when <see cref="Monitor.Forecast"/> is called.</summary>
    WhenAsked,
}
