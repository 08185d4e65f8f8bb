using OnboardHeat.Core.Scans;

namespace OnboardHeat.Engine.Ports;

/// <summary>
/// The one door for what people do: page, button, topic and command line put actions in, the loop gives them to the
/// next scan.
/// </summary>
public interface IActionInbox
{
    /// <summary>
    /// Puts an action in. False when the inbox is full (a flood): the caller says so to whoever asked.
    /// </summary>
    bool Offer(PersonAction action);
}
