using System.Text.Json;

namespace OnboardHeat.Engine.Options.Table;

/// <summary>A section: a JSON object with known keys.</summary>
internal sealed class OptionSection<TOwner, TSection>(
    string name, Func<TOwner, TSection> get, OptionKeys<TSection> keys)
    : OptionNode<TOwner>(name)
{
    /// <inheritdoc/>
    public override void Take(ref Utf8JsonReader json, TOwner owner, string path, OptionReading reading) =>
        keys.Take(ref json, get(owner), path, reading);

    /// <inheritdoc/>
    public override void TakeText(string text, TOwner owner, string[] steps, int depth, OptionReading reading) =>
        keys.TakeText(text, get(owner), steps, depth, reading);

    /// <inheritdoc/>
    public override void Describe(TOwner owner, string path, ICollection<OptionFacts> into)
    {
        into.Add(new OptionFacts(path, "object", null, null, null, false));
        keys.Describe(get(owner), path + ":", into);
    }
}
