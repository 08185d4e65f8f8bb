namespace OnboardHeat.Core.Watch;

/// <summary>What is kept of an alarm over a restart.</summary>
/// <param name="Name">Name of the alarm.</param>
/// <param name="Subject">Its subject; may be empty.</param>
/// <param name="State">Where it stood.</param>
/// <param name="WasPresent">Whether its condition held.</param>
/// <param name="IsRepaired">Whether a person said it was repaired since it was raised.</param>
/// <param name="IsAcknowledged">Whether a person had acknowledged it.</param>
/// <param name="AgeS">Seconds since it was raised; not negative.</param>
/// <param name="ShelvedLeftS">Seconds of shelving left; zero when it is not shelved.</param>
/// <param name="Because">The sentence it was raised with.</param>
public sealed record KeptAlarm(
    string Name, string Subject, AlarmState State, bool WasPresent, bool IsRepaired, bool IsAcknowledged, double AgeS,
    double ShelvedLeftS,
    string Because);
