using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Screening;
using OnboardHeat.Core.Watch;

namespace OnboardHeat.Core.Tests.Watch;

/// <summary>A scan in which nothing happens costs no memory: the daemon runs for years.</summary>
public sealed class QuietScanTests
{
    [Fact]
    public void Screening_AllocatesNothing()
    {
        var screen = new ReadingScreen(new FittedSet(Channels.All.ToArray(), Signals.All.ToArray()));
        var scan = new Scan();
        long TakeMany()
        {
            var before = GC.GetAllocatedBytesForCurrentThread();
            for (var i = 0; i < 2000; i++)
            {
                scan.Elapsed += TimeSpan.FromSeconds(2);
                scan[Signal.EngineRunning] = true;
                foreach (var channel in Channels.All)
                {
                    scan[channel] = i % 50 == 7 ? Reading.None
                        : Reading.Of(60 + ((int)channel * -2) + (0.0625 * (i % 3)));
                }

                screen.Observe(scan);
            }

            return GC.GetAllocatedBytesForCurrentThread() - before;
        }

        TakeMany();
        Assert.Equal(0, TakeMany());
    }

    [Fact]
    public void AlarmPointsAndBoard_AllocateNothing()
    {
        var board = new AlarmBoard();
        var points = AlarmTable.Rows.Select(row => board.Point(row.Kind)).ToArray();
        var elapsedS = 0.0;
        long TakeMany()
        {
            var before = GC.GetAllocatedBytesForCurrentThread();
            for (var i = 0; i < 1000; i++)
            {
                elapsedS += 2;
                foreach (var point in points)
                {
                    point.Observe(false, elapsedS);
                }

                board.Close(elapsedS);
            }

            return GC.GetAllocatedBytesForCurrentThread() - before;
        }

        TakeMany();
        Assert.Equal(0, TakeMany());
    }
}
