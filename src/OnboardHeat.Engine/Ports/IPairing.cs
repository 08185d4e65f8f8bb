namespace OnboardHeat.Engine.Ports;

/// <summary>
/// Makes phones known to the page. The page implements it; the control socket, guarded by its file mode, asks for it.
/// </summary>
public interface IPairing
{
    /// <summary>A new code that works once within a few minutes; the one before it stops working.</summary>
    PairingCode NewCode();

    /// <summary>The phones known: short number, name, wall-clock label of the pairing.</summary>
    IReadOnlyList<(string Id, string Name, DateTimeOffset PairedUtc)> Phones { get; }

    /// <summary>Forgets one phone, or all for an empty id; how many were forgotten.</summary>
    int Forget(string id);
}
