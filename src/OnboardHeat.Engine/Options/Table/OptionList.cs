using System.Text.Json;

namespace OnboardHeat.Engine.Options.Table;

/// <summary>A list of alike items, each a JSON object with known keys. The environment cannot change it.</summary>
internal sealed class OptionList<TOwner, TItem>(
    string name, int maxCount, Action<TOwner, IReadOnlyList<TItem>> set, OptionKeys<TItem> keys)
    : OptionNode<TOwner>(name)
    where TItem : new()
{
    /// <inheritdoc/>
    public override void Take(ref Utf8JsonReader json, TOwner owner, string path, OptionReading reading)
    {
        if (json.TokenType != JsonTokenType.StartArray)
        {
            reading.Problem(path, "takes a list");
            json.Skip();
            return;
        }

        var items = new List<TItem>();
        while (json.Read() && json.TokenType != JsonTokenType.EndArray)
        {
            var item = new TItem();
            var itemPath = $"{path}:{items.Count}";
            reading.State(itemPath, reading.Place(json));
            if (keys.Take(ref json, item, itemPath, reading))
            {
                keys.Require(itemPath, reading);
            }

            items.Add(item);
        }

        if (items.Count > maxCount)
        {
            reading.Problem(path, $"has {items.Count} items; {maxCount} is the most");
        }

        set(owner, items);
    }

    /// <inheritdoc/>
    public override void TakeText(string text, TOwner owner, string[] steps, int depth, OptionReading reading) =>
        reading.Problem(string.Join(':', steps), "is a list or in one; the environment sets single values only");

    /// <inheritdoc/>
    public override void Describe(TOwner owner, string path, ICollection<OptionFacts> into)
    {
        into.Add(new OptionFacts(path, "array", null, null, maxCount, false));
        keys.Describe(new TItem(), path + "[]:", into);
    }
}
