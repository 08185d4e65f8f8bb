using OnboardHeat.Core;
using OnboardHeat.Core.Scans;

namespace OnboardHeat.Engine;

/// <summary>
/// One turn of the judging loop: the scan that went in (a copy nobody changes) and the picture that came out.
/// </summary>
public sealed record Turn(Scan Scan, Picture Picture);
