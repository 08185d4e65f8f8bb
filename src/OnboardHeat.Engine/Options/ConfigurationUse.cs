namespace OnboardHeat.Engine.Options;

/// <summary>What a configuration is read for; only <see cref="Run"/> wants anything stated.</summary>
public enum ConfigurationUse
{
    /// <summary>Anything that can answer with the defaults.</summary>
    Any,

    /// <summary>The daemon in its van: the tank's volume and at least one probe must be stated.</summary>
    Run,
}
