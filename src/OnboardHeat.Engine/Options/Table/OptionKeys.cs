using System.Text.Json;

namespace OnboardHeat.Engine.Options.Table;

/// <summary>The keys that a section or a list's item knows.</summary>
internal sealed class OptionKeys<TOwner>(params OptionNode<TOwner>[] keys)
{
    /// <summary>Takes an object key by key. False when it was no object.</summary>
    public bool Take(ref Utf8JsonReader json, TOwner owner, string path, OptionReading reading)
    {
        if (json.TokenType != JsonTokenType.StartObject)
        {
            var instead = json.TokenType == JsonTokenType.StartArray ? "a list" : Words.Of(ref json);
            reading.Problem(path, $"takes a section in braces, not {instead}");
            json.Skip();
            return false;
        }

        var seen = new HashSet<string>(StringComparer.Ordinal);
        while (json.Read() && json.TokenType == JsonTokenType.PropertyName)
        {
            var name = json.GetString()!;
            var place = reading.Place(json);
            var keyPath = path.Length == 0 ? Words.Brief(name) : $"{path}:{Words.Brief(name)}";
            json.Read();
            if (path.Length == 0 && name == "$schema")
            {
                json.Skip();
            }
            else if (!seen.Add(name))
            {
                reading.Problem(place, keyPath, "is stated twice");
                json.Skip();
            }
            else if (Find(name) is { } key)
            {
                reading.State(keyPath, place);
                key.Take(ref json, owner, keyPath, reading);
            }
            else
            {
                reading.Problem(place, keyPath, "is no known key" + Hint(name));
                json.Skip();
            }
        }

        return true;
    }

    /// <summary>Takes a value from the environment.</summary>
    public void TakeText(string text, TOwner owner, string[] steps, int depth, OptionReading reading)
    {
        if (depth >= steps.Length)
        {
            reading.Problem(string.Join(':', steps), "is a section; the environment sets single values only");
        }
        else if (Find(steps[depth]) is { } key)
        {
            key.TakeText(text, owner, steps, depth + 1, reading);
        }
        else
        {
            reading.Problem(string.Join(':', steps), "is no known key" + Hint(steps[depth]));
        }
    }

    /// <summary>Notes each required key that the item at a path does not state.</summary>
    public void Require(string path, OptionReading reading)
    {
        foreach (var key in keys.OfType<OptionScalar<TOwner>>().Where(k =>
            k.IsRequired && !reading.Stated.ContainsKey($"{path}:{k.Name}")))
        {
            reading.Problem(path, $"lacks '{key.Name}'");
        }
    }

    /// <summary>Adds what is known of each key to a list.</summary>
    public void Describe(TOwner owner, string path, ICollection<OptionFacts> into)
    {
        foreach (var key in keys)
        {
            key.Describe(owner, path + key.Name, into);
        }
    }

    private OptionNode<TOwner>? Find(string name) => Array.Find(keys, k => k.Name == name);

    private string Hint(string name) => Spelling.Hint(name, keys.Select(k => k.Name));
}
