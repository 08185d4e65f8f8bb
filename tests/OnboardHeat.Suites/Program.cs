namespace OnboardHeat.Suites;

internal static class Program
{
    private static int Main(string[] args)
    {
        var isShort = Environment.GetEnvironmentVariable("ONBOARDHEAT_SHORT") == "1";
        var began = TimeProvider.System.GetTimestamp();
        var code = (args.Length > 0 ? args[0] : "") switch
        {
            "loss" when Request.Read(args, 100, 3000, isShort) is { } request => LossSuite.Run(request),
            "nights" when Request.Read(args, 10, 100, isShort) is { } request => NightSuite.Run(request),
            "stored" when Request.Read(args, 10, 100, isShort) is { } request => StoredSuite.Run(request),
            "rating" when Request.Read(args, 20, 200, isShort) is { } request => RatingSuite.Run(request),
            _ => TellUsage(),
        };
        Console.Error.WriteLine($"took {TimeProvider.System.GetElapsedTime(began).TotalSeconds:0} s");
        return code;
    }

    private static int TellUsage()
    {
        Console.Error.WriteLine(Request.Usage);
        return 64;
    }
}
