using System.Text.Json;

namespace OnboardHeat.Engine.Options.Table;

/// <summary>A key with a single value.</summary>
internal abstract class OptionScalar<TOwner>(string name, bool isRequired) : OptionNode<TOwner>(name)
{
    /// <summary>Whether a list's item must state it.</summary>
    public bool IsRequired => isRequired;

    /// <inheritdoc/>
    public override void Take(ref Utf8JsonReader json, TOwner owner, string path, OptionReading reading)
    {
        if (json.TokenType is JsonTokenType.StartObject or JsonTokenType.StartArray)
        {
            reading.Problem(
                path, $"takes {What}, not {(json.TokenType == JsonTokenType.StartObject ? "a section" : "a list")}");
            json.Skip();
        }
        else if (json.TokenType == JsonTokenType.Null)
        {
            reading.Problem(path, $"has no value; it takes {What}, and left out it has its default");
        }
        else if (TakeValue(ref json, owner) is { } problem)
        {
            reading.Problem(path, problem);
        }
    }

    /// <inheritdoc/>
    public override void TakeText(string text, TOwner owner, string[] steps, int depth, OptionReading reading)
    {
        var path = string.Join(':', steps);
        if (depth < steps.Length)
        {
            reading.Problem(path, $"'{string.Join(':', steps[..depth])}' is a value and has nothing below it");
        }
        else if (TakeText(text, owner) is { } problem)
        {
            reading.Problem(path, problem);
        }
    }

    /// <summary>What it takes, in words.</summary>
    protected abstract string What { get; }

    /// <summary>Takes a single token. Gives what is wrong with it, or null.</summary>
    protected abstract string? TakeValue(ref Utf8JsonReader json, TOwner owner);

    /// <summary>Takes a written value. Gives what is wrong with it, or null.</summary>
    protected abstract string? TakeText(string text, TOwner owner);
}
