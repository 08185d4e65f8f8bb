namespace OnboardHeat.Core.Shower;

/// <summary>Until when the top stays usable if the tank stands untouched.</summary>
public enum UntilKind
{
    /// <summary>It cannot be told.</summary>
    Unknown,

    /// <summary>It is below the usable temperature already.</summary>
    NowBelow,

    /// <summary>It falls below at a stated time.</summary>
    At,

    /// <summary>Not within seven days.</summary>
    BeyondSevenDays,
}
