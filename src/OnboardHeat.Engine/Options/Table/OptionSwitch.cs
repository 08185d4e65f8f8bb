using System.Text.Json;

namespace OnboardHeat.Engine.Options.Table;

/// <summary>Yes or no.</summary>
internal sealed class OptionSwitch<TOwner>(string name, Func<TOwner, bool> get, Action<TOwner, bool> set)
    : OptionScalar<TOwner>(name, false)
{
    /// <inheritdoc/>
    protected override string What => "true or false";

    /// <inheritdoc/>
    public override void Describe(TOwner owner, string path, ICollection<OptionFacts> into) =>
        into.Add(new OptionFacts(path, "boolean", get(owner) ? "true" : "false", null, null, IsRequired));

    /// <inheritdoc/>
    protected override string? TakeValue(ref Utf8JsonReader json, TOwner owner)
    {
        if (json.TokenType is not (JsonTokenType.True or JsonTokenType.False))
        {
            return $"takes {What}, not {Words.Of(ref json)}";
        }

        set(owner, json.GetBoolean());
        return null;
    }

    /// <inheritdoc/>
    protected override string? TakeText(string text, TOwner owner)
    {
        if (text is not ("true" or "false"))
        {
            return $"takes {What}, not '{Words.Brief(text)}'";
        }

        set(owner, text == "true");
        return null;
    }
}
