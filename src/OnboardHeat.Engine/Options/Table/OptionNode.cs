using System.Text.Json;

namespace OnboardHeat.Engine.Options.Table;

/// <summary>
/// One known key of the configuration: how it is read, checked and shown. The whole configuration is a tree of these.
/// </summary>
/// <typeparam name="TOwner">The options that hold the key.</typeparam>
internal abstract class OptionNode<TOwner>(string name)
{
    /// <summary>The key as written.</summary>
    public string Name => name;

    /// <summary>Takes the key's value; the reader stands on its first token and is left on its last.</summary>
    public abstract void Take(ref Utf8JsonReader json, TOwner owner, string path, OptionReading reading);

    /// <summary>
    /// Takes a value from the environment. The steps after <paramref name="depth"/> lead further down.
    /// </summary>
    public abstract void TakeText(string text, TOwner owner, string[] steps, int depth, OptionReading reading);

    /// <summary>Adds what is known of the key, and of those below it, to a list.</summary>
    public abstract void Describe(TOwner owner, string path, ICollection<OptionFacts> into);
}
