using OnboardHeat.Core.Scans;
using OnboardHeat.Engine.Ports;

namespace OnboardHeat.History.Blocks;

/// <summary>Ten minutes of one run: for every column how many values, the lowest, their mean and the highest.</summary>
internal sealed class RollupSpan(TimeSpan start)
{
    /// <summary>
    /// Length of a span. 30 days at 1,000 points are 43 minutes a point, so longer charts need nothing finer.
    /// </summary>
    public static readonly TimeSpan Length = TimeSpan.FromMinutes(10);

    /// <summary>Columns: the channels, then the figures.</summary>
    public static readonly int Columns = Channels.Count + FigureNames.All.Count;

    private readonly int[] _count = new int[Columns];
    private readonly double[] _min = new double[Columns];
    private readonly double[] _sum = new double[Columns];
    private readonly double[] _max = new double[Columns];

    /// <summary>Elapsed time at which it begins: a multiple of its length.</summary>
    public TimeSpan Start { get; } = start;

    /// <summary>Number of a column by its name; -1 where there is none of it.</summary>
    public static int ColumnOf(string name)
    {
        if (Channels.TryParse(name, out var channel))
        {
            return (int)channel;
        }

        for (var i = 0; i < FigureNames.All.Count; i++)
        {
            if (FigureNames.All[i] == name)
            {
                return Channels.Count + i;
            }
        }

        return -1;
    }

    public int Count(int column) => _count[column];

    public double Min(int column) => _min[column];

    public double Mean(int column) => _sum[column] / _count[column];

    public double Max(int column) => _max[column];

    public void Add(int column, double value) => Add(column, 1, value, value, value);

    public void Add(int column, int count, double min, double mean, double max)
    {
        if (count == 0)
        {
            return;
        }

        _min[column] = _count[column] == 0 ? min : Math.Min(_min[column], min);
        _max[column] = _count[column] == 0 ? max : Math.Max(_max[column], max);
        _sum[column] += mean * count;
        _count[column] += count;
    }
}
