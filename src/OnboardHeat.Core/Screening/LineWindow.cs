namespace OnboardHeat.Core.Screening;

/// <summary>
/// The last minute of a line, its partner and the tray, a sample every two seconds at most: enough to see one fall
/// alone.
/// </summary>
internal sealed class LineWindow
{
    private const int Capacity = 32;
    private const double SpacingS = 1.9;

    private readonly LineSample[] _samples = new LineSample[Capacity];
    private int _first;
    private int _count;

    public void Clear() => _count = 0;

    /// <summary>Adds a sample and forgets those older than the window.</summary>
    public void Add(LineSample sample)
    {
        while (_count > 0 && (sample.AtS - _samples[_first].AtS > ScreeningPolicy.LooseWindowS || _count == Capacity))
        {
            _first = (_first + 1) % Capacity;
            _count--;
        }

        if (_count > 0 && sample.AtS - _samples[(_first + _count - 1) % Capacity].AtS < SpacingS)
        {
            return;
        }

        _samples[(_first + _count) % Capacity] = sample;
        _count++;
    }

    public int Count => _count;

    /// <summary>The sample at an index, oldest first.</summary>
    public LineSample this[int index] => _samples[(_first + index) % Capacity];
}
