using OnboardHeat.Core;
using OnboardHeat.Core.Shower;

namespace OnboardHeat.Messaging.Topics;

/// <summary>What of a picture, when it changes, is worth a whole picture at once.</summary>
internal readonly record struct PictureKey(
    int AlarmChanges, bool? IsEngineRunning, bool? IsCirculating, bool IsInWorks, bool IsTankKnown, ReadyKind Ready)
{
    /// <summary>The key of a picture.</summary>
    /// <param name="picture">The picture.</param>
    /// <param name="alarmChanges">
    /// How often an alarm came, went or changed its state so far; words alone do not count.
    /// </param>
    public static PictureKey Of(Picture picture, int alarmChanges) => new(
        alarmChanges, picture.Circuit.IsEngineRunning, picture.Circuit.IsCirculating, picture.IsInWorks,
        picture.Tank.IsKnown,
        picture.Forecast.Ready);
}
