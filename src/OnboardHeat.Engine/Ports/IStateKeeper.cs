using OnboardHeat.Core;

namespace OnboardHeat.Engine.Ports;

/// <summary>
/// Takes what is to outlive a restart. Never waits for the disk: the newest state wins, an older unwritten one is let
/// go.
/// </summary>
public interface IStateKeeper
{
    /// <summary>Hands over a state to be written soon.</summary>
    void Offer(KeptState state);
}
