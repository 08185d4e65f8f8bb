using OnboardHeat.Core.Journeys;
using OnboardHeat.Core.Scans;
using OnboardHeat.Engine.Ports;

namespace OnboardHeat.Engine.Review;

/// <summary>Gathers the scans of a span into the points of a course: means over equal stretches of time.</summary>
internal static class CourseReading
{
    /// <summary>Points of a course: as many as a wide screen can show apart.</summary>
    private const int Points = 480;

    /// <summary>
    /// Coolant this far above the water with the engine on heats it, kelvin: below, probes' own errors decide.
    /// </summary>
    private const double HeatsFromK = 3;

    /// <summary>The course of a span; empty where no tank probe has a reading.</summary>
    public static async Task<IReadOnlyList<CoursePoint>> ReadAsync(
        ReviewSpan span, IRecordReader record, CancellationToken cancellationToken)
    {
        var lengthS = span.Run is null ? (span.To - span.From).TotalSeconds : span.ToS - span.FromS;
        var stretchS = Math.Max(1, lengthS / Points);
        var course = new List<CoursePoint>();
        var now = new Stretch();
        await foreach (var (atS, scan) in span.ReadAsync(record, cancellationToken).ConfigureAwait(false))
        {
            if (now.Count > 0 && atS - now.FirstS >= stretchS)
            {
                course.Add(now.Point);
                now = new Stretch();
            }

            now.Add(atS, scan);
        }

        if (now.Count > 0)
        {
            course.Add(now.Point);
        }

        return course;
    }

    private sealed class Stretch
    {
        private double _waterSum;
        private double _aroundSum;
        private int _aroundCount;
        private int _heatedCount;
        private double _lastS;

        public double FirstS { get; private set; }

        public int Count { get; private set; }

        public CoursePoint Point => new(
            (FirstS + _lastS) / 2, _waterSum / Count, _aroundCount > 0 ? _aroundSum / _aroundCount : null,
            _heatedCount * 2 > Count);

        public void Add(double atS, Scan scan)
        {
            var (sum, count) = (0.0, 0);
            foreach (var channel in Channels.OfTank)
            {
                if (scan[channel].HasValue)
                {
                    sum += scan[channel].Value;
                    count++;
                }
            }

            if (count == 0)
            {
                return;
            }

            FirstS = Count == 0 ? atS : FirstS;
            _lastS = atS;
            Count++;
            _waterSum += sum / count;
            if (scan[Channel.Surroundings].HasValue)
            {
                _aroundSum += scan[Channel.Surroundings].Value;
                _aroundCount++;
            }

            if (scan[Signal.EngineRunning] != false && scan[Channel.Flow].HasValue
                && scan[Channel.Flow].Value > (sum / count) + HeatsFromK)
            {
                _heatedCount++;
            }
        }
    }
}
