namespace OnboardHeat.Outputs.Sounding;

/// <summary>What a person orders with the one button.</summary>
internal enum ButtonOrder
{
    None,

    /// <summary>A short press.</summary>
    Acknowledge,

    /// <summary>A long press: lamp and buzzer.</summary>
    Test,

    /// <summary>Two short presses and a long one: the tank was drained, or filled again.</summary>
    Drained,

    /// <summary>Three short presses and a long one: works on the circuit begin, or end.</summary>
    Works,

    /// <summary>Nobody holds a button for a minute.</summary>
    Stuck,
}
