namespace OnboardHeat.Daemon;

internal static class Program
{
    private static int Main(string[] args) => args.Length;
}
