namespace OnboardHeat.Outputs.Sounding;

/// <summary>What a person did with the button.</summary>
internal enum Press
{
    None,

    /// <summary>Acknowledge.</summary>
    Short,

    /// <summary>Lamp and buzzer test.</summary>
    Long,

    /// <summary>Nobody holds a button for a minute.</summary>
    Stuck,
}
