namespace OnboardHeat.Glance.Routing;

/// <summary>What a request needs before its route is served.</summary>
internal enum Access
{
    /// <summary>Page shells, styles and scripts: they hold nothing of the van.</summary>
    Shell,

    /// <summary>
    /// Figures of the van: from this machine, from a paired phone, or from anyone where reading was opened.
    /// </summary>
    Reading,

    /// <summary>Pairing itself: POST with a code, and nothing else.</summary>
    Pairing,

    /// <summary>Doing something: a paired phone, its token, our own page as origin.</summary>
    Acting,
}
