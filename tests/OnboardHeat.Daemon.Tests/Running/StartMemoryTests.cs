using OnboardHeat.Daemon.Running;

namespace OnboardHeat.Daemon.Tests.Running;

public sealed class StartMemoryTests
{
    /// <summary>In the form of proc(5), cut to the lines that are looked at.</summary>
    private static readonly string[] s_smaps =
    [
        "55f8a5459000-55f8a549c000 r-xp 00034000 00:2e 123 /usr/local/bin/onboardheat",
        "Rss:                 268 kB",
        "Anonymous:             0 kB",
        "Swap:                  0 kB",
        "55f8a70d9000-55f8a70db000 r--p 01c88000 00:2e 123 /usr/local/bin/onboardheat",
        "Anonymous:             8 kB",
        "Swap:                  0 kB",
        "55f8a70d9000-55f8a70db000 r--p 01c88000 00:2e 123 /usr/lib/libc.so.6",
        "Anonymous:             0 kB",
        "Swap:                  4 kB",
        "55f8a70db000-55f8a714f000 rw-p 01c8a000 00:2e 123 /usr/local/bin/onboardheat",
        "Anonymous:             0 kB",
        "Swap:                  0 kB",
        "55f8a714f000-55f8a7988000 rw-p 00000000 00:00 0 ",
        "Anonymous:             0 kB",
        "Swap:                  0 kB",
        "7ffd1f9e4000-7ffd1f9e8000 r--p 00000000 00:00 0                          [vvar]",
        "Anonymous:             0 kB",
        "Swap:                  0 kB",
    ];

    [Fact]
    public void OnlyReadOnlyFilePagesThatNobodyChanged_AreLetGo() =>
        Assert.Equal([(0x55f8a5459000UL, 0x43000UL)], StartMemory.UnchangedFilePages(s_smaps));

    [Fact]
    public void ThisProcess_GoesOnAfterLettingGo()
    {
        // The code that ran before is fetched again from its file: the same sum as before.
        var before = Enumerable.Range(0, 1000).Sum(i => Math.Sin(i));
        Assert.True(StartMemory.LetGo() > 0);
        Assert.Equal(before, Enumerable.Range(0, 1000).Sum(i => Math.Sin(i)));
    }
}
