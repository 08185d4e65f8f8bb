using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Watch;

namespace OnboardHeat.Core.Tests.Watch;

/// <summary>One alarm's life on a board of its own, told in letters (see <see cref="AlarmStateModelTests"/>).</summary>
internal sealed class AlarmStory
{
    private readonly AlarmBoard _board = new();
    private double _elapsedS;

    public AlarmStory(AlarmKind kind) => Point = _board.Point(kind);

    public AlarmPoint Point { get; }

    public string Changes { get; private set; } = "";

    public IReadOnlyList<KeptAlarm> Keep() => _board.Keep(_elapsedS);

    public void Play(string sequence)
    {
        foreach (var letter in sequence)
        {
            _elapsedS++;
            switch (letter)
            {
                case '+':
                    Point.Observe(true, _elapsedS, 0, 0);
                    break;
                case '-':
                    Point.Observe(false, _elapsedS, 0, 0);
                    break;
                case 'm':
                    _elapsedS += 60;
                    break;
                default:
                    _board.Take(ActionOf(letter), _elapsedS);
                    break;
            }

            foreach (var change in _board.Close(_elapsedS))
            {
                Changes += change.IsRaised ? '+' : '-';
            }
        }
    }

    private PersonAction ActionOf(char letter) => letter switch
    {
        'a' => new PersonAction(ActionKind.Acknowledge, "", ""),
        'r' => new PersonAction(ActionKind.Repaired, "", ""),
        's' => new PersonAction(ActionKind.Shelve, Point.Definition.Name, "1"),
        'u' => new PersonAction(ActionKind.Shelve, Point.Definition.Name, "0"),
        'w' => new PersonAction(ActionKind.WorksBegin, "", ""),
        'e' => new PersonAction(ActionKind.WorksEnd, "", ""),
        _ => throw new ArgumentOutOfRangeException(nameof(letter), letter, "No such letter."),
    };
}
