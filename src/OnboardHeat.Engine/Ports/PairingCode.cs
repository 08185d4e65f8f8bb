namespace OnboardHeat.Engine.Ports;

/// <summary>A code that makes one phone known, and where it is entered.</summary>
/// <param name="Code">Decimal digits; works once.</param>
/// <param name="GoodFor">How long it works.</param>
/// <param name="Addresses">Addresses of the page's entry, the likeliest first.</param>
/// <param name="IsForPhones">
/// Whether a phone can reach one of them; false while the page listens on this machine only.
/// </param>
public sealed record PairingCode(string Code, TimeSpan GoodFor, IReadOnlyList<string> Addresses, bool IsForPhones);
