using OnboardHeat.Engine.Ports;

namespace OnboardHeat.Daemon.Control;

/// <summary>Makes phones known to the page and forgets them, for whoever may use the control socket.</summary>
internal sealed class PairingAnswer(Func<IPairing?> page) : IControlAnswer
{
    /// <summary>What stands for every phone.</summary>
    public const string AllPhones = "all";

    /// <inheritdoc/>
    public Task<ControlReply?> AnswerAsync(ControlRequest request, CancellationToken cancellationToken) =>
        Task.FromResult(Answer(request));

    private ControlReply? Answer(ControlRequest request)
    {
        if (request.Command is not ("pair" or "unpair" or "phones"))
        {
            return null;
        }

        return page() is not { } pairing
            ? ControlReply.Refused("the page is not up; the journal says why") : request.Command switch
        {
            "pair" => Code(pairing.NewCode()),
            "phones" => ControlReply.Done(
                [.. pairing.Phones.Select(p => $"{p.Id}  {p.PairedUtc:yyyy-MM-dd}  {p.Name}")]),
            _ => Forget(pairing, request.Target),
        };
    }

    /// <summary>The code on the first line, whether phones reach the page on the second, then the addresses.</summary>
    private static ControlReply Code(PairingCode code) =>
        ControlReply.Done([code.Code, code.IsForPhones ? "network" : "this machine", .. code.Addresses]);

    private static ControlReply Forget(IPairing pairing, string phone)
    {
        if (phone.Length == 0)
        {
            return ControlReply.Refused("unpair takes a phone's number, or all");
        }

        var count = pairing.Forget(phone == AllPhones ? "" : phone);
        return count == 0 && phone != AllPhones
            ? ControlReply.Refused($"there is no phone {phone}")
            : ControlReply.Done(count == 1 ? "1 phone forgotten" : $"{count} phones forgotten");
    }
}
