using System.Globalization;
using System.Text.Json;

namespace OnboardHeat.Engine.Options.Table;

/// <summary>A number with a unit and a range.</summary>
internal sealed class OptionNumber<TOwner>(
    string name, double min, double max, string unit,
    Func<TOwner, double?> get, Action<TOwner, double> set, bool isRequired = false)
    : OptionScalar<TOwner>(name, isRequired)
{
    /// <inheritdoc/>
    protected override string What =>
        string.Create(CultureInfo.InvariantCulture, $"a number of {unit}, {min} to {max}");

    /// <inheritdoc/>
    public override void Describe(TOwner owner, string path, ICollection<OptionFacts> into) =>
        into.Add(
            new OptionFacts(path, "number", get(owner)?.ToString(CultureInfo.InvariantCulture), min, max, IsRequired)
        {
            Unit = unit,
        });

    /// <inheritdoc/>
    protected override string? TakeValue(ref Utf8JsonReader json, TOwner owner) =>
        Take(json.TokenType == JsonTokenType.Number ? json.GetDouble() : double.NaN, owner)
            ? null
            : $"takes {What}, not {Words.Of(ref json)}";

    /// <inheritdoc/>
    protected override string? TakeText(string text, TOwner owner) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && Take(value, owner)
            ? null
            : $"takes {What}, not '{Words.Brief(text)}'";

    private bool Take(double value, TOwner owner)
    {
        if (!double.IsFinite(value) || value < min || value > max)
        {
            return false;
        }

        set(owner, value);
        return true;
    }
}
