namespace OnboardHeat.Core.Shower;

/// <summary>When a useful shower will be there, heating on as now.</summary>
public enum ReadyKind
{
    /// <summary>It cannot be told.</summary>
    Unknown,

    /// <summary>It is there now.</summary>
    Now,

    /// <summary>It will be there at a stated time.</summary>
    At,

    /// <summary>At this rate it will not be reached.</summary>
    NotAtThisRate,

    /// <summary>Nothing heats.</summary>
    NotHeating,
}
