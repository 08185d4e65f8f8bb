using OnboardHeat.Core.Scans;

namespace OnboardHeat.Probes.Contacts;

/// <summary>One on-off contact as the owner wired it.</summary>
/// <param name="Signal">What it says.</param>
/// <param name="Pin">GPIO number of the line (not the number of the header's pin); not negative.</param>
/// <param name="IsActiveLow">Whether a low level means 1, as behind an opto-coupler that pulls down.</param>
public sealed record ContactFitting(Signal Signal, int Pin, bool IsActiveLow);
