using BenchmarkDotNet.Running;

namespace OnboardHeat.Benchmarks;

/// <summary>
/// <c>figures</c> prints what tests/limits/replay-speed holds; <c>recording FILE</c> writes the long recording it
/// replays; anything else goes to BenchmarkDotNet.
/// </summary>
internal static class Program
{
    private static int Main(string[] args)
    {
        switch (args)
        {
            case ["figures"]:
                JudgingFigures.Print(Console.Out);
                return 0;
            case ["recording", var file]:
                LongRecording.Write(file);
                return 0;
            default:
                BenchmarkSwitcher.FromTypes([typeof(MonitorBenchmarks)]).Run(args);
                return 0;
        }
    }
}
