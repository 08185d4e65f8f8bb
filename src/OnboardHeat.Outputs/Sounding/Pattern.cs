using OnboardHeat.Core.Watch;

namespace OnboardHeat.Outputs.Sounding;

/// <summary>
/// A rhythm of a lamp or a buzzer: spans on and off by turns, on first, repeated. Told apart without counting (common
/// practice, no source).
/// </summary>
internal sealed class Pattern
{
    private readonly TimeSpan[] _spans;

    private Pattern(params int[] spansMs)
    {
        _spans = [.. spansMs.Select(ms => TimeSpan.FromMilliseconds(ms))];
        Length = TimeSpan.FromMilliseconds(spansMs.Sum());
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

    /// <summary>How long it takes until it repeats itself; zero for a level that stands.</summary>
    public TimeSpan Length { get; }

    /// <summary>Some short tones and, where something has begun, a long one after them.</summary>
    public static Pattern Answer(int tones, bool hasLongOne)
    {
        var spansMs = new List<int>();
        for (var i = 0; i < tones; i++)
        {
            spansMs.AddRange([150, 200]);
        }

        spansMs.AddRange(hasLongOne ? [800, 400] : []);
        return new Pattern([.. spansMs]);
    }

    /// <summary>The buzzer's rhythm for a priority; null: silence.</summary>
    public static Pattern ToneOf(AlarmPriority? priority) => priority switch
    {
        AlarmPriority.Critical => CriticalTone,
        AlarmPriority.Warning => WarningTone,
        _ => Off,
    };

    /// <summary>The lamp's rhythm for a sign.</summary>
    public static Pattern LightOf(LampSign sign) => sign switch
    {
        LampSign.Critical => CriticalLamp,
        LampSign.Warning => WarningLamp,
        LampSign.Seen => On,
        LampSign.Works => WorksLamp,
        _ => Off,
    };

    /// <summary>The level so long after the pattern began, and how long it stays; null: for good.</summary>
    public (bool IsOn, TimeSpan? Left) At(TimeSpan since)
    {
        if (_spans.Length == 0)
        {
            return (ReferenceEquals(this, On), null);
        }

        var left = TimeSpan.FromTicks(since.Ticks % Length.Ticks);
        var index = 0;
        while (left >= _spans[index])
        {
            left -= _spans[index];
            index++;
        }

        return (index % 2 == 0, _spans[index] - left);
    }
}
