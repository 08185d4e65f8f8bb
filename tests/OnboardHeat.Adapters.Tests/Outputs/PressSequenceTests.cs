using OnboardHeat.Outputs.Sounding;

namespace OnboardHeat.Adapters.Tests.Outputs;

public sealed class PressSequenceTests
{
    [Theory]
    [InlineData("s", "Acknowledge")]
    [InlineData("ss", "Acknowledge None")]
    [InlineData("l", "Test")]
    [InlineData("sl", "Acknowledge Test")]
    [InlineData("ssl", "Acknowledge None Drained")]
    [InlineData("sssl", "Acknowledge None None Works")]
    [InlineData("ssssl", "Acknowledge None None None None")]
    [InlineData("ss-l", "Acknowledge None Test")]
    [InlineData("sss-s", "Acknowledge None None Acknowledge")]
    public void RowOfPresses_IsItsOrder(string presses, string expected)
    {
        var sequence = new PressSequence();
        var now = TimeSpan.FromSeconds(100);
        var orders = new List<ButtonOrder>();
        foreach (var press in presses)
        {
            if (press == '-')
            {
                now += PressSequence.Pause + TimeSpan.FromSeconds(1);
                continue;
            }

            now += press == 'l' ? PressJudge.LongAfter + TimeSpan.FromSeconds(0.5) : TimeSpan.FromSeconds(0.5);
            orders.Add(sequence.After(press == 'l' ? Press.Long : Press.Short, now));
        }

        Assert.Equal(expected, string.Join(' ', orders));
    }

    [Fact]
    public void StuckButton_OrdersNothing_AndBreaksTheRow()
    {
        var sequence = new PressSequence();
        sequence.After(Press.Short, TimeSpan.FromSeconds(1));
        sequence.After(Press.Short, TimeSpan.FromSeconds(2));
        Assert.Equal(ButtonOrder.Stuck, sequence.After(Press.Stuck, TimeSpan.FromSeconds(3)));
        Assert.Equal(ButtonOrder.Test, sequence.After(Press.Long, TimeSpan.FromSeconds(6.5)));
    }
}
