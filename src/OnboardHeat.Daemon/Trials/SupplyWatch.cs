using OnboardHeat.Engine;

namespace OnboardHeat.Daemon.Trials;

/// <summary>
/// Looks at the computer's own flag for a supply that dips, where the kernel has one (the Pi's: the hwmon device
/// `rpi_volt`, whose `in0_lcrit_alarm` is 1 for a dip since the last look of the kernel, which looks every two
/// seconds). A computer without it has nothing to say, and nothing is guessed.
/// </summary>
internal sealed class SupplyWatch(HouseStatus house, TimeProvider time, string folder = SupplyWatch.Hwmon)
{
    /// <summary>Where the kernel lists its own measuring devices.</summary>
    public const string Hwmon = "/sys/class/hwmon";

    /// <summary>As often as the kernel looks itself: its flag stands for one of its periods.</summary>
    public static readonly TimeSpan Every = TimeSpan.FromSeconds(2);

    /// <summary>
    /// A dip is told for so long: one lasts milliseconds, and the alarm waits ten seconds for a second look.
    /// </summary>
    public static readonly TimeSpan ToldFor = TimeSpan.FromSeconds(30);

    private const string Name = "rpi_volt", Flag = "in0_lcrit_alarm";

    private readonly long _start = time.GetTimestamp();
    private TimeSpan? _dippedAt;

    /// <summary>Whether this computer has the flag.</summary>
    public bool IsThere => FlagFile() is not null;

    /// <summary>Looks until asked to stop.</summary>
    public async Task RunAsync(CancellationToken ending)
    {
        while (!ending.IsCancellationRequested)
        {
            Look();
            await Task.Delay(Every, time, ending).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }

    /// <summary>One look.</summary>
    internal void Look()
    {
        var now = time.GetElapsedTime(_start);
        if (FlagFile() is { } file && Read(file) == "1")
        {
            _dippedAt = now;
        }

        house.SetPowerLow(_dippedAt is { } at && now - at < ToldFor);
    }

    /// <summary>Looked for each time: drivers are loaded late, and their numbers change from start to start.</summary>
    private string? FlagFile()
    {
        try
        {
            return Directory.EnumerateDirectories(folder)
                .Where(device => Read(Path.Combine(device, "name")) == Name)
                .Select(device => Path.Combine(device, Flag))
                .FirstOrDefault(File.Exists);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    private static string? Read(string file)
    {
        try
        {
            return File.ReadAllText(file).Trim();
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }
}
