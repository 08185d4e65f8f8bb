using OnboardHeat.Core.Circuit;
using OnboardHeat.Core.Scans;

namespace OnboardHeat.Core.Works;

/// <summary>
/// The story of one job on the circuit: begun, gone on with over restarts, ended by a person and by nothing else, and
/// asked about afterwards.
/// </summary>
internal sealed class WorksJob
{
    private static readonly WorksReport s_asks = new() { AsksWhatChanged = true };

    private readonly Bleeding _bleeding = new();
    private double _beganS;
    private bool _isFromBeforeRestart;

    /// <summary>A job that goes on from what was kept, or none.</summary>
    public WorksJob(KeptState kept)
    {
        IsUnderWay = kept.IsInWorks;
        _isFromBeforeRestart = kept.IsInWorks;
        AsksWhatChanged = kept.AsksWhatChanged;
        _beganS = -kept.WorksAgeS;
    }

    public bool IsUnderWay { get; private set; }

    public bool AsksWhatChanged { get; private set; }

    /// <summary>Seconds that works have lasted; zero when none are under way.</summary>
    public double AgeS(double elapsedS) => IsUnderWay ? elapsedS - _beganS : 0;

    /// <summary>Begun twice counts from the first; ended without begin is nothing.</summary>
    public void Take(ActionKind kind, double elapsedS)
    {
        switch (kind)
        {
            case ActionKind.WorksBegin when !IsUnderWay:
                (IsUnderWay, _isFromBeforeRestart, AsksWhatChanged, _beganS) = (true, false, false, elapsedS);
                _bleeding.Begin();
                break;
            case ActionKind.WorksEnd when IsUnderWay:
                (IsUnderWay, _isFromBeforeRestart, AsksWhatChanged) = (false, false, true);
                break;
            case ActionKind.Changed:
                AsksWhatChanged = false;
                break;
        }
    }

    /// <summary>Looks at the loop while works are under way.</summary>
    public void Observe(Loop loop)
    {
        if (IsUnderWay)
        {
            _bleeding.Observe(loop);
        }
    }

    /// <summary>The report after this scan.</summary>
    public WorksReport Report(double elapsedS) => (IsUnderWay, AsksWhatChanged) switch
    {
        (false, false) => WorksReport.None,
        (false, true) => s_asks,
        _ => new WorksReport
        {
            IsUnderWay = true,
            AgeS = AgeS(elapsedS),
            IsFromBeforeRestart = _isFromBeforeRestart,
            Flow = _bleeding.Flow,
            Return = _bleeding.Return,
            Bleeding = _bleeding.Step,
            CanShowHeat = _bleeding.CanShowHeat,
            CirculatesForS = Math.Floor(_bleeding.CirculatesForS),
        },
    };
}
