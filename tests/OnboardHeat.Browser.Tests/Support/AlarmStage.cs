using OnboardHeat.Simulation;

namespace OnboardHeat.Browser.Tests.Support;

/// <summary>
/// Up the second pass with a hot tank whose relief valve is written down as one of 60 °C: half a minute later (the
/// delay of <c>tank-over-temperature</c>) a critical alarm stands.
/// </summary>
public sealed class AlarmStage() : Stage(DrivePlans.MountainDay(hoseComesOff: false), 10_600, reliefCelsius: 60)
{
    private static readonly TimeSpan s_patience = TimeSpan.FromSeconds(90);

    /// <inheritdoc/>
    public override async Task InitializeAsync()
    {
        await base.InitializeAsync();
        var began = TimeProvider.System.GetTimestamp();
        while (!(await PictureAsync())["alarms"]!.AsArray().Any(alarm => (string)alarm!["priority"]! == "critical"))
        {
            Assert.True(TimeProvider.System.GetElapsedTime(began) < s_patience, "no critical alarm was raised");
            await Task.Delay(TimeSpan.FromMilliseconds(500), TimeProvider.System, CancellationToken.None);
        }
    }
}
