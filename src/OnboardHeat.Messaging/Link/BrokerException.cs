namespace OnboardHeat.Messaging.Link;

/// <summary>
/// The broker is not to be had, or no longer: the message is the one line that a person reads. Never leaves this
/// project.
/// </summary>
internal sealed class BrokerException(string message) : Exception(message);
