namespace OnboardHeat.Daemon.Demo;

/// <summary>How the demo is shown: a live picture on a terminal, or plain lines.</summary>
internal interface IDemoView : IDisposable
{
    /// <summary>A scan was judged. Called for each, so that nothing told is lost at high speed.</summary>
    void Observe(in DemoMoment moment);

    /// <summary>Time to show something; some ten times a second of real time.</summary>
    void Show(in DemoMoment moment, double speed);
}
