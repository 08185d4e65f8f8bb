namespace OnboardHeat.Engine.Ports;

/// <summary>
/// A line to the outside that moves as long as alarms are judged, for a circuit that notices when it stops.
/// </summary>
public interface IHeartbeat
{
    /// <summary>One beat. Returns at once and never throws: the judging loop calls it.</summary>
    void Beat();
}
