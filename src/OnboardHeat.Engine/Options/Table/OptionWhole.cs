using System.Globalization;
using System.Text.Json;

namespace OnboardHeat.Engine.Options.Table;

/// <summary>A whole number with a range.</summary>
internal sealed class OptionWhole<TOwner>(
    string name, int min, int max, Func<TOwner, int?> get, Action<TOwner, int> set, bool isRequired = false)
    : OptionScalar<TOwner>(name, isRequired)
{
    /// <inheritdoc/>
    protected override string What => string.Create(CultureInfo.InvariantCulture, $"a whole number, {min} to {max}");

    /// <inheritdoc/>
    public override void Describe(TOwner owner, string path, ICollection<OptionFacts> into) =>
        into.Add(
            new OptionFacts(path, "integer", get(owner)?.ToString(CultureInfo.InvariantCulture), min, max, IsRequired));

    /// <inheritdoc/>
    protected override string? TakeValue(ref Utf8JsonReader json, TOwner owner) =>
        json.TokenType == JsonTokenType.Number && json.TryGetInt32(out var value) && Take(value, owner)
            ? null
            : $"takes {What}, not {Words.Of(ref json)}";

    /// <inheritdoc/>
    protected override string? TakeText(string text, TOwner owner) =>
        int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var value)
            && Take(value, owner)
            ? null
            : $"takes {What}, not '{Words.Brief(text)}'";

    private bool Take(int value, TOwner owner)
    {
        if (value < min || value > max)
        {
            return false;
        }

        set(owner, value);
        return true;
    }
}
