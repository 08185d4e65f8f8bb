using System.Text.Json;

namespace OnboardHeat.Engine.Options.Table;

/// <summary>
/// What a reading of the configuration gathers on its way: where each key was stated, and every problem.
/// </summary>
internal sealed class OptionReading(string file, byte[] bytes)
{
    private readonly List<string> _problems = [];
    private readonly Dictionary<string, string> _stated = new(StringComparer.Ordinal);

    /// <summary>Everything that is wrong, in the order it was found.</summary>
    public IReadOnlyList<string> Problems => _problems;

    /// <summary>
    /// Where each stated key stands: <c>file:line:column</c>, or the name of an environment variable.
    /// </summary>
    public IReadOnlyDictionary<string, string> Stated => _stated;

    /// <summary>The place of the token that the reader stands on.</summary>
    public string Place(in Utf8JsonReader json) => Place(json.TokenStartIndex);

    /// <summary>The place of a byte of the file.</summary>
    public string Place(long index)
    {
        var before = bytes.AsSpan(0, (int)index);
        var line = before.Count((byte)'\n') + 1;
        var column = before.Length - before.LastIndexOf((byte)'\n');
        return $"{file}:{line}:{column}";
    }

    /// <summary>
    /// Notes that a key was stated. False when it was stated before in the same place: JSON lets a key stand twice.
    /// </summary>
    public void State(string path, string place) => _stated[path] = place;

    /// <summary>Notes a problem of a key that was stated, at its place.</summary>
    public void Problem(string path, string what) =>
        Problem(_stated.TryGetValue(path, out var place) ? place : file, path, what);

    /// <summary>Notes a problem at a place.</summary>
    public void Problem(string place, string path, string what) =>
        _problems.Add(path.Length == 0 ? $"{place}: {what}" : $"{place}: {path}: {what}");
}
