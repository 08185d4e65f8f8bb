using OnboardHeat.Core.Scans;
using OnboardHeat.Engine.Ports;
using OnboardHeat.History.Blocks;
using OnboardHeat.History.Files;

namespace OnboardHeat.History.ReadBack;

/// <summary>Draws the lines of a chart: each point holds what its columns did in its span of time.</summary>
internal sealed class ChartDrawing
{
    private readonly IReadOnlyList<string> _names;
    private readonly int[] _columns;
    private readonly DateTimeOffset _from;
    private readonly TimeSpan _width;
    private readonly RollupSpan[] _points;

    public ChartDrawing(IReadOnlyList<string> columns, DateTimeOffset from, DateTimeOffset to, int points)
    {
        _names = columns;
        _columns = [.. columns.Select(RollupSpan.ColumnOf)];
        _from = from;
        _width = (to - from) / points;
        _points = [.. Enumerable.Range(0, points).Select(i => new RollupSpan(_width * i))];
    }

    /// <summary>Whether roll-ups are fine enough for it.</summary>
    public bool IsOfRollups => _width >= RollupSpan.Length;

    public void Add(RunDates dates, in OpenedBlock block)
    {
        switch (block.Header.Kind)
        {
            case BlockKind.Rollups:
                foreach (var span in RollupCodec.Decode(block.Header, block.Payload.Span))
                {
                    Add(dates, span);
                }

                break;
            case BlockKind.Scans:
                foreach (var scan in ScanCodec.Decode(block.Header, block.Payload.Span))
                {
                    Add(dates, scan);
                }

                break;
            default:
                foreach (var entry in EntryCodec.Decode(block.Header, block.Payload.Span, out _))
                {
                    Add(dates, entry);
                }

                break;
        }
    }

    public IReadOnlyList<ChartLine> Lines() =>
        [.. _names.Select((name, i) => new ChartLine(name, Points(_columns[i])))];

    private List<ChartPoint> Points(int column)
    {
        var points = new List<ChartPoint>();
        foreach (var point in _points)
        {
            if (column >= 0 && point.Count(column) > 0)
            {
                points.Add(new ChartPoint(
                    _from + point.Start + (_width / 2), point.Min(column), point.Mean(column), point.Max(column)));
            }
        }

        return points;
    }

    private void Add(RunDates dates, RollupSpan span)
    {
        if (PointAt(dates, span.Start + (RollupSpan.Length / 2)) is not { } point)
        {
            return;
        }

        foreach (var column in _columns)
        {
            if (column >= 0 && span.Count(column) > 0)
            {
                point.Add(column, span.Count(column), span.Min(column), span.Mean(column), span.Max(column));
            }
        }
    }

    private void Add(RunDates dates, Scan scan)
    {
        if (PointAt(dates, scan.Elapsed) is not { } point)
        {
            return;
        }

        foreach (var column in _columns)
        {
            if (column >= 0 && column < Channels.Count && scan[(Channel)column].HasValue)
            {
                point.Add(column, scan[(Channel)column].Value);
            }
        }
    }

    private void Add(RunDates dates, Entry entry)
    {
        if (entry.Figures is null || PointAt(dates, entry.Elapsed) is not { } point)
        {
            return;
        }

        foreach (var column in _columns)
        {
            if (column >= Channels.Count && entry.Figures[column - Channels.Count] is { } value)
            {
                point.Add(column, value);
            }
        }
    }

    private RollupSpan? PointAt(RunDates dates, TimeSpan elapsed)
    {
        if (dates.At(elapsed) is not { } at)
        {
            return null;
        }

        var index = (long)Math.Floor((at - _from) / _width);
        return index >= 0 && index < _points.Length ? _points[index] : null;
    }
}
