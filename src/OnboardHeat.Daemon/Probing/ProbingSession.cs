using System.Globalization;

namespace OnboardHeat.Daemon.Probing;

/// <summary>What <c>probes</c> does with its view of the bus, told in lines as it goes.</summary>
internal sealed class ProbingSession(IBusView view, TimeProvider time, TextWriter to)
{
    /// <summary>Between two looks: a measurement takes 0.75 s, and the bus is shared with the daemon.</summary>
    private static readonly TimeSpan s_between = TimeSpan.FromSeconds(1);

    /// <summary>Nobody warms a probe any more.</summary>
    public static readonly TimeSpan WarmWithin = TimeSpan.FromMinutes(2);

    /// <summary>A glass of water is steady long before.</summary>
    public static readonly TimeSpan SteadyWithin = TimeSpan.FromMinutes(5);

    /// <summary>Lists the bus once.</summary>
    public async Task<int> ListAsync(CancellationToken cancellationToken)
    {
        var sight = await view.LookAsync(cancellationToken).ConfigureAwait(false);
        Tell($"1-Wire bus, {view.Words}:");
        foreach (var line in ProbesPage.Lines(sight))
        {
            Tell($"{line}");
        }

        return ExitCode.Done;
    }

    /// <summary>
    /// Names each probe that is warmed in the hand, until all have been or nobody warms one any more.
    /// </summary>
    public async Task<int> NameWarmedAsync(CancellationToken cancellationToken)
    {
        var warmed = new WarmedProbe();
        Tell($"Take one probe in your hand and hold it; let the others be.");
        var since = time.GetTimestamp();
        while (time.GetElapsedTime(since) < WarmWithin)
        {
            var sight = await view.LookAsync(cancellationToken).ConfigureAwait(false);
            if (warmed.Observe(sight) is { } probe)
            {
                Tell($"{WordsFor(probe)}");
                since = time.GetTimestamp();
            }

            if (warmed.Named > 0 && warmed.Named == sight.Probes.Count(seen => seen.IsOnBus))
            {
                return ExitCode.Done;
            }

            await Task.Delay(s_between, time, cancellationToken).ConfigureAwait(false);
        }

        Tell($"For {WarmWithin.TotalMinutes:0} minutes none has warmed by itself.");
        return warmed.Named > 0 ? ExitCode.Done : ExitCode.BadInput;
    }

    /// <summary>Compares two probes that are held together and keeps the difference.</summary>
    public async Task<int> CompareAsync(string reference, string other, CancellationToken cancellationToken)
    {
        var check = new PairCheck(reference, other);
        Tell($"Hold {reference} and {other} together, in one glass of water or one hand.");
        var since = time.GetTimestamp();
        string? told = null;
        while (!check.IsSteady)
        {
            if (time.GetElapsedTime(since) > SteadyWithin)
            {
                Tell($"They do not come to rest; nothing is kept.");
                return ExitCode.BadInput;
            }

            var missing = check.Observe(await view.LookAsync(cancellationToken).ConfigureAwait(false));
            if (missing is not null && missing != told)
            {
                Tell($"{missing}");
            }

            told = missing;
            await Task.Delay(s_between, time, cancellationToken).ConfigureAwait(false);
        }

        return await ConcludeAsync(check, reference, other).ConfigureAwait(false);
    }

    private async Task<int> ConcludeAsync(PairCheck check, string reference, string other)
    {
        // The record of a scan has four decimals; an offset needs no more than three.
        var offset = Math.Round(check.OffsetKelvin, 3);
        var side = offset < 0 ? "above" : "below";
        Tell($"At {check.Celsius:0.0} °C {other} reads {Math.Abs(offset):0.000} K {side} {reference}.");
        if (Math.Abs(offset) > PairCheck.MostK)
        {
            Tell($"Sound probes do not differ so: they are not together, or one is bad. Nothing is kept.");
            return ExitCode.BadInput;
        }

        if (Math.Abs(offset) > ProbesPage.PlausibleOffsetKelvin)
        {
            Tell($"! Two sound probes differ by 1 K at most (each within 0.5 K, maker's data sheet).");
        }

        if (await view.KeepOffsetAsync(other, offset, reference).ConfigureAwait(false) is { } problem)
        {
            Tell($"Not kept: {problem}");
            return ExitCode.Failed;
        }

        Tell($"Kept: {offset:+0.000;-0.000;0.000} K is added to {other}, beside the owner's OffsetKelvin.");
        return ExitCode.Done;
    }

    private void Tell(FormattableString words) => to.WriteLine(words.ToString(CultureInfo.InvariantCulture));

    private static string WordsFor(ProbeSight probe) => probe.Channels.Count > 0
        ? $"{probe.Rom} is the one in your hand; it is configured as {string.Join(" and ", probe.Channels)}."
        : $"{probe.Rom} is the one in your hand; it is not configured.";
}
