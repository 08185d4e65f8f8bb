namespace OnboardHeat.Core.Circuit.Signs;

/// <summary>
/// One physical sign of the coolant circuit, with its own health. It answers two questions in log likelihood ratios
/// (nats): has the circulation stopped, and is coolant leaving. A sign whose probes are bad weighs nothing.
/// </summary>
internal interface ICircuitSign
{
    /// <summary>Short name, for the evidence that is kept and for taking it away in trials.</summary>
    string Name { get; }

    /// <summary>Whether its probes allow it to speak.</summary>
    bool IsHealthy { get; }

    /// <summary>
    /// For 'no coolant passes the coil' against 'it runs as usual', nats; negative speaks for running.
    /// </summary>
    double StoppedNats { get; }

    /// <summary>
    /// For 'coolant is leaving' against 'it stands still in full pipes', nats; negative speaks for full pipes.
    /// </summary>
    double LeavingNats { get; }

    /// <summary>Looks at the loop after a scan.</summary>
    void Observe(Loop loop);

    /// <summary>What it saw, in figures, for the alarm's sentence.</summary>
    string Words(Loop loop);
}
