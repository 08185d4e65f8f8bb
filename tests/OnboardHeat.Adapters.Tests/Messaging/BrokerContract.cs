using System.Diagnostics;
using System.Text.Json;
using OnboardHeat.Adapters.Tests.Support;
using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Watch;

namespace OnboardHeat.Adapters.Tests.Messaging;

/// <summary>
/// What an outside client sees, whichever broker stands between. The witness is mosquitto's own client, not our
/// library.
/// </summary>
public abstract class BrokerContract
{
    private const string Root = RunningWorker.Root;

    /// <summary>A broker that is ready to be connected to.</summary>
    protected abstract Task<IBrokerUnderTest> StartBrokerAsync();

    [Fact]
    public async Task LateListener_FindsEverythingThatIsRetained()
    {
        await using var broker = await StartBrokerAsync();
        await using var worker = new RunningWorker(broker.Options);
        worker.Publish(SomeTurn.At(1234, alarms: SomeTurn.Alarm(AlarmKind.RatingNear, subject: "heater-hose")));
        await worker.ConnectedAsync();
        // The values go out last: whoever sees the newest of them can count on the rest.
        await using (var first = await MosquittoListener.StartAsync(broker.Port, Root + "channel-celsius/tray"))
        {
            await first.FirstAsync("channel-celsius/tray");
        }

        await using var late = await MosquittoListener.StartAsync(broker.Port, Root + "#");

        Assert.Equal("yes", (await late.FirstAsync("/alive")).Payload);
        Assert.Equal("5.4", (await late.FirstAsync("/shower-minutes")).Payload);
        Assert.Equal("1.235", (await late.FirstAsync("/stored-energy-kwh")).Payload);
        Assert.Equal("61.30", (await late.FirstAsync("/channel-celsius/tank_top")).Payload);
        Assert.Equal("unknown", (await late.FirstAsync("/channel-celsius/tray")).Payload);
        Assert.Equal("yes", (await late.FirstAsync("/engine-running")).Payload);
        using var picture = JsonDocument.Parse((await late.FirstAsync("/picture")).Payload);
        Assert.Equal(1234, picture.RootElement.GetProperty("elapsedS").GetDouble());
        using var alarm = JsonDocument.Parse((await late.FirstAsync("/alarms/rating-near/heater-hose")).Payload);
        Assert.Equal("advice", alarm.RootElement.GetProperty("priority").GetString());
        Assert.Equal("unacknowledged", alarm.RootElement.GetProperty("state").GetString());
        Assert.All(late.All, received => Assert.True(received.Retain, received.Topic));
    }

    [Fact]
    public async Task AlarmThatComesAndGoes_IsToldAndTakenBack()
    {
        await using var broker = await StartBrokerAsync();
        await using var worker = new RunningWorker(broker.Options);
        await worker.ConnectedAsync();
        await using var listener = await MosquittoListener.StartAsync(broker.Port, Root + "alarms/#");

        worker.Publish(SomeTurn.At(100, alarms: SomeTurn.Alarm(AlarmKind.CoolantLoss)));
        var raised = await listener.FirstAsync("/alarms/coolant-loss");
        worker.Publish(SomeTurn.At(102));
        var cleared = await listener.FirstAsync(r => r.Payload.Contains("\"normal\""), "coolant-loss is normal");

        Assert.Contains("\"state\":\"unacknowledged\"", raised.Payload);
        Assert.Contains("\"whatToDo\":[\"Stop where it is safe to stop.\"", raised.Payload);
        Assert.Equal(raised.Topic, cleared.Topic);
        Assert.Contains("\"present\":false", cleared.Payload);
        Assert.Equal(2, listener.All.Count);
    }

    [Fact]
    public async Task Messages_CarryTheirMqtt5Properties()
    {
        await using var broker = await StartBrokerAsync();
        await using var worker = new RunningWorker(broker.Options);
        await worker.ConnectedAsync();
        await using var listener = await MosquittoListener.StartAsync(broker.Port, Root + "#", "--retain-as-published");

        worker.Publish(SomeTurn.At(100, alarms: SomeTurn.Alarm(AlarmKind.CoolantLoss)));

        var picture = await listener.FirstAsync("/picture");
        Assert.Equal(
            ("application/json", "1", "180", true, 1),
            (picture.ContentType, picture.PayloadFormat, picture.Expiry, picture.Retain, picture.Qos));
        var minutes = await listener.FirstAsync("/shower-minutes");
        Assert.Equal(
            ("text/plain; charset=utf-8", "1", "180", true),
            (minutes.ContentType, minutes.PayloadFormat, minutes.Expiry, minutes.Retain));
        var alarm = await listener.FirstAsync("/alarms/coolant-loss");
        Assert.Equal(
            ("application/json", "1", "1800", true, 1),
            (alarm.ContentType, alarm.PayloadFormat, alarm.Expiry, alarm.Retain, alarm.Qos));
    }

    [Fact]
    public async Task Stopping_SaysThatNobodyJudgesAnyMore()
    {
        await using var broker = await StartBrokerAsync();
        var worker = new RunningWorker(broker.Options);
        worker.Publish(SomeTurn.At(100));
        await worker.ConnectedAsync();
        await using var listener = await MosquittoListener.StartAsync(broker.Port, Root + "alive");
        await listener.FirstAsync(r => r.Payload == "yes", "alive yes");

        await worker.StopAsync();

        var last = await listener.FirstAsync(r => r.Payload == "no", "alive no");
        Assert.Equal(Root + "alive", last.Topic);
    }

    [Fact]
    public async Task Action_IsTakenOnceAndAnswered()
    {
        await using var broker = await StartBrokerAsync();
        var options = broker.Options;
        options.AcceptActions = true;
        await using var worker = new RunningWorker(options);
        worker.Publish(SomeTurn.At(100, alarms: SomeTurn.Alarm(AlarmKind.Frost)));
        await worker.ConnectedAsync();
        await using var moments = await MosquittoListener.StartAsync(broker.Port, Root + "moment");
        var moment = (await moments.FirstAsync("/moment")).Payload;
        await using var answers = await MosquittoListener.StartAsync(broker.Port, "phone/answers");

        var question = $$"""{"id":"a1","moment":"{{moment}}","target":"frost"}""";
        await AskAsync(broker.Port, "acknowledge", question);
        var taken = await answers.FirstAsync(r => r.Payload.Contains("\"a1\""), "an answer");
        await AskAsync(broker.Port, "acknowledge", question);
        var again = await answers.FirstAsync(r => r.Payload.Contains("refused"), "a second answer");

        Assert.Contains("\"result\":\"taken\"", taken.Payload);
        Assert.Equal("c-1", taken.Correlation);
        Assert.Contains("repeated", again.Payload);
        Assert.Equal([new PersonAction(ActionKind.Acknowledge, "frost", "")], worker.Inbox.TakeAll());
    }

    [Fact]
    public async Task RetainedAction_IsNeverActedOn()
    {
        await using var broker = await StartBrokerAsync();
        var options = broker.Options;
        options.AcceptActions = true;
        await using var worker = new RunningWorker(options);
        worker.Publish(SomeTurn.At(100));
        await worker.ConnectedAsync();
        await using var moments = await MosquittoListener.StartAsync(broker.Port, Root + "moment");
        var moment = (await moments.FirstAsync("/moment")).Payload;
        await using var answers = await MosquittoListener.StartAsync(broker.Port, "phone/answers");

        await AskAsync(broker.Port, "drained", $$"""{"id":"a1","moment":"{{moment}}"}""", "-r");

        Assert.Contains(
            "retained", (await answers.FirstAsync(r => r.Payload.Contains("refused"), "an answer")).Payload);
        Assert.Empty(worker.Inbox.TakeAll());
    }

    [Fact]
    public async Task ActionsNotAccepted_NobodyAnswers()
    {
        await using var broker = await StartBrokerAsync();
        await using var worker = new RunningWorker(broker.Options);
        worker.Publish(SomeTurn.At(100));
        await worker.ConnectedAsync();
        await using var listener = await MosquittoListener.StartAsync(broker.Port, "#");

        await AskAsync(broker.Port, "drained", """{"id":"a1","moment":"x-1"}""");
        worker.Publish(SomeTurn.At(102, showerMinutes: 3.3));
        await listener.FirstAsync(r => r.Payload == "3.3", "the next turn");

        Assert.DoesNotContain(
            listener.All, r => r.Topic == "phone/answers" || r.Topic.EndsWith("/moment", StringComparison.Ordinal));
        Assert.Empty(worker.Inbox.TakeAll());
    }

    private protected static async Task AskAsync(int port, string action, string question, params string[] more)
    {
        string[] arguments =
        [
            "-V", "5", "-h", "127.0.0.1", "-p", $"{port}", "-t", $"{Root}actions/{action}", "-q", "1", "-m", question,
            "-D", "PUBLISH", "response-topic", "phone/answers", "-D", "PUBLISH", "correlation-data", "c-1", .. more,
        ];
        using var asking = Process.Start(
            new ProcessStartInfo(Mosquitto.Find("mosquitto_pub"), arguments) { RedirectStandardError = true })!;
        await asking.WaitForExitAsync();
    }
}
