using System.Text;
using OnboardHeat.Adapters.Tests.Support;
using OnboardHeat.Core.Scans;
using OnboardHeat.Engine;
using OnboardHeat.Messaging.Actions;
using OnboardHeat.Messaging.Topics;

namespace OnboardHeat.Adapters.Tests.Messaging;

public sealed class ActionDoorTests
{
    private static readonly TopicTree s_topics = new("pass-hopper");
    private readonly SettableClock _time = new();
    private readonly ActionInbox _inbox = new();
    private readonly Moments _moments;
    private readonly ActionDoor _door;

    public ActionDoorTests()
    {
        _moments = new Moments(_time);
        _door = new ActionDoor(s_topics, _moments, _inbox, _time);
    }

    [Theory]
    [InlineData(29, AnswerForm.Taken)]
    [InlineData(30, AnswerForm.Taken)]
    [InlineData(31, AnswerForm.Refused)]
    [InlineData(3600, AnswerForm.Refused)]
    public void Question_IsActedOnForThirtySecondsAfterItsMoment(int ageS, string expected)
    {
        var moment = _moments.Now();
        _time.Advance(TimeSpan.FromSeconds(ageS));

        Assert.Equal(expected, Ask("drained", moment: moment).Result);
        Assert.Equal(expected == AnswerForm.Taken ? 1 : 0, _inbox.TakeAll().Count);
    }

    [Fact]
    public void WallClockSetBack_ChangesNoAge()
    {
        var moment = _moments.Now();
        _time.Advance(TimeSpan.FromSeconds(31));
        _time.SetBy = TimeSpan.FromHours(-1);

        Assert.Contains("older than 30 s", Ask("drained", moment: moment).Why);
    }

    [Fact]
    public void MomentOfAnEarlierRun_OrNone_IsRefused_AndTheAnswerCarriesTheNewest()
    {
        var old = new Moments(_time).Now();

        var answer = Ask("drained", moment: old);

        Assert.Contains("not of this run", answer.Why);
        Assert.Equal(AnswerForm.Taken, Ask("drained", moment: answer.Moment).Result);
        Assert.Contains("moment missing", Send("drained", """{"id":"b"}""").Why);
    }

    [Theory]
    [InlineData("")]
    [InlineData("not json")]
    [InlineData("[1,2]")]
    [InlineData("""{"id":5}""")]
    [InlineData("""{"id":""}""")]
    [InlineData("""{"id":"a","unknown":1}""")]
    [InlineData("""{"id":"a","moment":"x-1"}{""")]
    public void MalformedQuestion_IsRefusedInOneSentence(string payload)
    {
        var answer = Send("drained", payload);

        Assert.Equal(AnswerForm.Refused, answer.Result);
        Assert.StartsWith("not a JSON object", answer.Why);
        Assert.Empty(_inbox.TakeAll());
    }

    [Fact]
    public void QuestionLongerThanItMayBe_IsMalformed() =>
        Assert.StartsWith(
            "not a JSON object",
            Send("note", $$"""{"id":"a","text":"{{new string('x', ActionDoor.MaxPayloadBytes)}}"}""").Why);

    [Theory]
    [InlineData("shelve", "coolant-loss", "critical")]
    [InlineData("shelve", "no-such", "no alarm")]
    [InlineData("acknowledge", "no-such/part", "no alarm")]
    [InlineData("changed", "engine", "one of hoses")]
    [InlineData("drained", "frost", "no target")]
    [InlineData("explode", "", "no such action")]
    public void ActionThatCannotBe_IsRefusedWithItsReason(string action, string target, string why) =>
        Assert.Contains(why, Ask(action, target: target).Why);

    [Theory]
    [InlineData("works-end", "", "no works are under way")]
    [InlineData("acknowledge", "", "nothing stands")]
    [InlineData("acknowledge", "frost", "cannot be acknowledged in advance")]
    public void ActionThatWouldDoNothing_IsRefusedAsThingsStand(string action, string target, string why)
    {
        var payload = $$"""{"id":"a","moment":"{{_moments.Now()}}","target":"{{target}}"}""";
        var question = new Question(
            $"{s_topics.Root}actions/{action}", Encoding.UTF8.GetBytes(payload), false, "phone/a", null);
        Assert.Contains(why, _door.Take(question, SomeTurn.At(100).Picture).Answer.Why, StringComparison.Ordinal);
        Assert.Empty(_inbox.TakeAll());
    }

    [Theory]
    [InlineData("onboardheat/pass-hopper/picture")]
    [InlineData("phone/#")]
    [InlineData("$SYS/x")]
    public void AnswerOnATopicThatIsNotTheAskers_IsNotSent(string responseTopic)
    {
        var question = new Question(s_topics.Action(ActionKind.Drained), "{}"u8.ToArray(), false, responseTopic, null);

        Assert.Null(_door.Take(question).Message);
    }

    [Fact]
    public void Flood_IsRefusedWithoutGrowing()
    {
        var results = Enumerable.Range(0, 1000).Select(i => Ask("drained", id: $"a{i}").Result).ToList();

        Assert.Equal(ActionInbox.Capacity, results.Count(result => result == AnswerForm.Taken));
        Assert.Equal(AnswerForm.Refused, results[^1]);
    }

    private AnswerForm Ask(string action, string id = "a", string? moment = null, string target = "") =>
        Send(action, $$"""{"id":"{{id}}","moment":"{{moment ?? _moments.Now()}}","target":"{{target}}"}""");

    private AnswerForm Send(string action, string payload) =>
        _door.Take(new Question(
            $"{s_topics.Root}actions/{action}", Encoding.UTF8.GetBytes(payload), false, "phone/a", null)).Answer;
}
