using System.Text.Json;

namespace OnboardHeat.Engine.Options.Table;

/// <summary>A text of a stated form.</summary>
internal sealed class OptionText<TOwner>(
    string name, TextForm form, Func<TOwner, string?> get, Action<TOwner, string> set, bool isRequired = false)
    : OptionScalar<TOwner>(name, isRequired)
{
    /// <inheritdoc/>
    protected override string What => form.What;

    /// <inheritdoc/>
    public override void Describe(TOwner owner, string path, ICollection<OptionFacts> into) =>
        into.Add(new OptionFacts(
            path, "string", get(owner) is { } text ? $"\"{text}\"" : null, null, form.MaxLength, IsRequired));

    /// <inheritdoc/>
    protected override string? TakeValue(ref Utf8JsonReader json, TOwner owner) =>
        json.TokenType == JsonTokenType.String
        ? TakeText(json.GetString()!, owner)
        : $"takes {What}, not {Words.Of(ref json)}";

    /// <inheritdoc/>
    protected override string? TakeText(string text, TOwner owner)
    {
        if (text.Length > form.MaxLength || !form.IsOne(text))
        {
            return $"takes {What}, not '{Words.Brief(text)}'";
        }

        set(owner, text);
        return null;
    }
}
