using OnboardHeat.Core.Scans;

namespace OnboardHeat.Engine.Options.Table;

/// <summary>A form that texts of the configuration have.</summary>
/// <param name="What">The form in words.</param>
/// <param name="MaxLength">Longest text in characters.</param>
/// <param name="IsOne">Whether a text has it.</param>
internal sealed record TextForm(string What, int MaxLength, Func<string, bool> IsOne)
{
    /// <summary>A short name that can stand in topics and alarm subjects.</summary>
    public static TextForm Id { get; } = new("a short name of a-z, 0-9 and '-'", 32, text =>
        text.Length > 0 && text.All(c => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c) || c == '-'));

    /// <summary>Words for people, on one line.</summary>
    public static TextForm Words { get; } = new(
        "words, up to 80 characters", 80, text => text.Length > 0 && !text.Any(char.IsControl));

    /// <summary>The name of a temperature channel.</summary>
    public static TextForm ChannelName { get; } = new(
        "a channel (tank_top, tank_middle, tank_bottom, flow, return, surroundings, tray, outlet, cold_supply, "
            + "engine_coolant)",
        32,
        text => Channels.TryParse(text, out _));

    /// <summary>The name of a signal.</summary>
    public static TextForm SignalName { get; } = new(
        "a signal (engine_running, tray_wet, coolant_low, valves_closed, element_on)",
        32,
        text => Core.Scans.Signals.TryParse(text, out _));

    /// <summary>A probe's number as the kernel writes it.</summary>
    public static TextForm Rom { get; } = new(
        "a probe's number, two hex digits, '-' and twelve hex digits in lower case", 15, text =>
        text.Length == 15 && text[2] == '-' && text.Remove(2, 1).All(char.IsAsciiHexDigitLower));

    /// <summary>The path of a file or folder that does not depend on where the daemon was started.</summary>
    public static TextForm AbsolutePath { get; } = new("an absolute path", 1024, IsAbsolutePath);

    /// <summary>The path of a Unix socket: the kernel holds 108 bytes with the closing zero.</summary>
    public static TextForm SocketPath { get; } = new("an absolute path of at most 107 characters", 107, IsAbsolutePath);

    /// <summary>A 1-Wire bus.</summary>
    public static TextForm BusName { get; } = new("the name of a bus master, or its absolute folder", 1024, text =>
        IsAbsolutePath(text) || (text.Length > 0 && text.All(c => char.IsAsciiLetterOrDigit(c) || c is '_' or '-')));

    /// <summary>A host's name or address.</summary>
    public static TextForm HostName { get; } = new("a host's name or address", 255, text =>
        Uri.CheckHostName(text) != UriHostNameType.Unknown);

    /// <summary>An address of this machine.</summary>
    public static TextForm Address { get; } = new(
        "an IP address of this machine", 64, text => System.Net.IPAddress.TryParse(text, out _));

    private static bool IsAbsolutePath(string text) => text.StartsWith('/') && !text.Any(char.IsControl);
}
