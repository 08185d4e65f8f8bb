using System.Globalization;
using System.Runtime.InteropServices;

namespace OnboardHeat.Daemon.Running;

/// <summary>
/// Hands back the memory that only the start needed. The start unpacks tables and runs code once, and reads most of the
/// program's file on its way. The pages are unchanged copies of the file, so letting them go loses nothing: what is
/// used again comes back by itself, from the page cache as long as the machine has room for it.
/// </summary>
internal static class StartMemory
{
    /// <summary>Everything is up by then, and the first picture, alarms and page are out.</summary>
    public static readonly TimeSpan After = TimeSpan.FromSeconds(10);

    /// <summary>madvise(2): the pages are not needed now.</summary>
    private const int DontNeed = 4;

    /// <summary>
    /// Young objects are collected this often. By itself the runtime waits until they fill as much as the processor's
    /// cache, 32 MB on some machines, and no setting in the program's file changes that; a minute's worth is one or
    /// two.
    /// </summary>
    public static readonly TimeSpan Every = TimeSpan.FromMinutes(1);

    /// <summary>Lets go a while after the start, and collects young objects from then on.</summary>
    public static ITimer LetGoLater(TimeProvider time)
    {
        var isStart = true;
        return time.CreateTimer(
            _ =>
            {
                if (isStart)
                {
                    isStart = false;
                    LetGo();
                    return;
                }

                GC.Collect(1, GCCollectionMode.Forced, blocking: true);
            },
            null, After, Every);
    }

    /// <summary>Lets go now; how many bytes of the address space were advised.</summary>
    public static long LetGo()
    {
        GC.Collect(GC.MaxGeneration, GCCollectionMode.Aggressive, blocking: true, compacting: true);
        try
        {
            return UnchangedFilePages(File.ReadAllLines("/proc/self/smaps")).Sum(
                static range =>
                    madvise((nuint)range.From, (nuint)range.Length, DontNeed) == 0 ? (long)range.Length : 0);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or FormatException)
        {
            // A kernel that does not show its maps keeps what it has: nothing depends on this.
            return 0;
        }
    }

    /// <summary>
    /// The ranges of read-only file mappings of which this process has changed no page (proc(5), smaps): code and
    /// constants. Those with a changed page hold addresses that were filled in at the start, and letting them go would
    /// lose them.
    /// </summary>
    internal static IEnumerable<(ulong From, ulong Length)> UnchangedFilePages(IEnumerable<string> smaps)
    {
        (ulong From, ulong Length)? range = null;
        foreach (var line in smaps)
        {
            // A mapping begins with its addresses; what is told of it begins with a capital.
            if (line.Length > 0 && char.IsAsciiHexDigitLower(line[0]))
            {
                range = RangeOf(line.Split(' ', StringSplitOptions.RemoveEmptyEntries));
            }
            else if (range is { } candidate && IsOfChanges(line))
            {
                // Changed pages are anonymous ones, or lie in the swap; the swap is told last.
                var isUnchanged = line.EndsWith(" 0 kB", StringComparison.Ordinal);
                if (isUnchanged && line.StartsWith("Swap:", StringComparison.Ordinal))
                {
                    yield return candidate;
                }

                range = isUnchanged ? range : null;
            }
        }
    }

    private static bool IsOfChanges(string line) =>
        line.StartsWith("Anonymous:", StringComparison.Ordinal) || line.StartsWith("Swap:", StringComparison.Ordinal);

    private static (ulong From, ulong Length)? RangeOf(string[] words)
    {
        if (words.Length < 6 || words[1] is not ("r-xp" or "r--p") || words[5][0] != '/')
        {
            return null;
        }

        var dash = words[0].IndexOf('-', StringComparison.Ordinal);
        var from = ulong.Parse(words[0].AsSpan(0, dash), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture);
        return (from, ulong.Parse(
            words[0].AsSpan(dash + 1), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture) - from);
    }

    [DllImport("libc")]
    private static extern int madvise(nuint from, nuint length, int advice);
}
