namespace OnboardHeat.Outputs.Sounding;

/// <summary>A rhythm of a lamp or a buzzer: spans on and off by turns, on first, repeated. Told apart without counting (common practice, no source).</summary>
internal sealed class Pattern
{
    private readonly TimeSpan[] _spans;
    private readonly TimeSpan _length;

    private Pattern(params int[] spansMs)
    {
        _spans = [.. spansMs.Select(ms => TimeSpan.FromMilliseconds(ms))];
        _length = TimeSpan.FromMilliseconds(spansMs.Sum());
    }

    public static Pattern Off { get; } = new();

    public static Pattern On { get; } = new();

    /// <summary>Three short tones every two seconds: nobody sleeps or drives through it.</summary>
    public static Pattern CriticalTone { get; } = new(200, 150, 200, 150, 200, 1100);

    /// <summary>Two soft tones every half minute: a driver remarks it and is not harried.</summary>
    public static Pattern WarningTone { get; } = new(150, 150, 150, 29_550);

    public static Pattern CriticalLamp { get; } = new(250, 250);

    public static Pattern WarningLamp { get; } = new(1000, 1000);

    public static Pattern WorksLamp { get; } = new(100, 2900);

    /// <summary>The level so long after the pattern began, and how long it stays; null: for good.</summary>
    public (bool IsOn, TimeSpan? Left) At(TimeSpan since)
    {
        if (_spans.Length == 0)
        {
            return (ReferenceEquals(this, On), null);
        }

        var left = TimeSpan.FromTicks(since.Ticks % _length.Ticks);
        var index = 0;
        while (left >= _spans[index])
        {
            left -= _spans[index];
            index++;
        }

        return (index % 2 == 0, _spans[index] - left);
    }
}
