using System.Globalization;

namespace OnboardHeat.Engine.Imports;

/// <summary>What a column brought: how many readings, how many cells without one, and between what they lie.</summary>
internal sealed class ImportedColumn(string name, string target)
{
    private long _count;
    private long _empty;
    private double _least = double.PositiveInfinity;
    private double _most = double.NegativeInfinity;

    public void Add(double? value)
    {
        if (value is not { } number)
        {
            _empty++;
            return;
        }

        _count++;
        _least = Math.Min(_least, number);
        _most = Math.Max(_most, number);
    }

    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"column '{name}' is {target}: {_count} readings{(_count > 0 ? $" from {_least} to {_most}" : "")}, {_empty} "
            + $"cells without one");
}
