namespace OnboardHeat.Glance.Guard;

/// <summary>A browser that was made known. Only hashes of its secrets are kept.</summary>
/// <param name="Id">Short public number of the phone, for the list and the audit log.</param>
/// <param name="Name">What its owner called it; may be empty.</param>
/// <param name="CookieHash">SHA-256 of its cookie, hexadecimal.</param>
/// <param name="TokenHash">SHA-256 of its action token, hexadecimal.</param>
/// <param name="PairedUtc">Wall-clock label of its pairing.</param>
internal sealed record Phone(string Id, string Name, string CookieHash, string TokenHash, DateTimeOffset PairedUtc);
