namespace OnboardHeat.Core.Screening;

/// <summary>
/// Every number that screening goes by, with its reason. The rule behind them: a reading is dropped only for a reason
/// that physics or the data sheet gives, because what is dropped is not watched. Where it says 'practice', the figure
/// was seen in recorded drives and nights.
/// </summary>
internal static class ScreeningPolicy
{
    // The probe itself: the ends of its measuring range (data sheet).
    public const double ProbeLowestCelsius = -55;
    public const double ProbeHighestCelsius = 125;

    // Values that a failing bus makes: before the first conversion, held low, and pulled up with nobody there (all bits
    // one).
    public const double PowerOnCelsius = 85;
    public const double HeldLowCelsius = 0;
    public const double NobodyCelsius = -0.0625;

    // Coolant and tanks do pass 85 °C, and winters 0 °C: only a jump onto such a value makes it suspect. An honest
    // probe that moves by more than this in one scan hits the value to the sixteenth once in some fifty such jumps.
    public const double SuspectJumpK = 3;

    // With nothing before it (a start, a long gap), such a value is believed when another place reads near it.
    public const double SuspectWitnessK = 15;
    public const double ReferenceOldS = 120;

    // Two offsets, noise and rounding: a step below this never says anything about a probe.
    public const double StepSlackK = 2;

    // A probe has a lag of seconds: it cannot go far and come back within two scans. Practice shows no honest turn
    // above 2 K.
    public const double TurnK = 6;
    public const double TurnWithinS = 20;

    // Trust after silence (missing, bad checksum): the probe told no lie, so the second good reading in a row is
    // believed, and a gap of a second while cranking costs one scan.
    public const int GoodAfterSilence = 2;

    // After a false value (power-on, all zero, out of range): three in a row, so that a pair of equal false ones is not
    // enough.
    public const int GoodAfterFalseValue = 3;

    // After an implausible step: five that follow each other smoothly. Of random values of +-30 K hardly one run in a
    // thousand does; a real step too fast for its place is accepted again after five scans.
    public const int GoodAfterStep = 5;

    // A probe that steps again soon after it was believed needs twice as many each time, up to this.
    public const int GoodAfterStepMost = 40;
    public const double RelapseS = 600;

    // What 'smoothly' allows between one step and the next: the lag of a probe lets its slope die away by a quarter a
    // scan, plus rounding.
    public const double SmoothSlackK = 1.5;
    public const double SmoothShare = 0.25;

    // Stuck: a line that stands to the sixteenth while its partner moved. In practice honest lines stood beside a move
    // of 1.6 K at most. An empty pipe at rest between tank and air stood for two minutes while its partner fell by 4 K
    // (simulated hose failure).
    public const double LineStillS = 120;
    public const double LineStillPartnerK = 8;

    // The top of a layered tank stands for minutes while a draw cools the bottom by 20 K (practice), but it loses a
    // sixteenth every few minutes; so a tank probe is stuck only after longer.
    public const double TankStillS = 1200;
    public const double TankStillPartnerK = 5;

    // The tray stood for ten minutes while the air beside it moved by this. (Not the other way: water in the tray warms
    // it alone.)
    public const double AirStillS = 600;
    public const double AirStillPartnerK = 6;

    // A body at rest with its surroundings may stand still for ever: such a probe is not called stuck.
    public const double AtRestK = 6;

    // Loose: a bare probe in air falls with a time constant of 10 to some 100 s (lag 2-20 s on metal, five times that
    // in still air), a lagged pipe of metal and coolant takes minutes, full or empty. So a fall faster than this
    // constant, with the partner standing, is the probe and not the pipe.
    public const double LooseTimeConstantS = 80;
    public const double LooseWindowS = 60;
    public const double LooseWindowLeastS = 6;
    public const double LooseFallK = 8;
    public const double LoosePartnerK = 2.5;
    public const double LoosePartnerShare = 0.15;

    // For so long coolant must have passed: a cold slug from lines that stood comes in the first minutes of a start.
    public const double CirculatingForS = 180;

    // Coolant warmer than this at the partner says that warm coolant passes, where no engine signal does.
    public const double WarmCoolantCelsius = 45;

    // A tray that warms says that it is no probe but coolant: then the fall is left to the watchers.
    public const double TrayRiseK = 2;
    public const double TrayRememberedS = 900;

    // Without a probe in the air, air is taken as this: low, so that a larger fall is asked for.
    public const double AirAssumedCelsius = 10;

    // Loose without a fall seen: the line is colder than the coldest water, or flow far below return, by more than
    // offsets and a clip-on that shows 90 % of the difference to the air explain, while the partner is above the tank
    // and the tank gains by this in this time.
    public const double LooseSlowS = 180;
    public const double LooseClipOnK = 5;
    public const double LooseClipOnShare = 0.1;
    public const double LoosePartnerAboveTankK = 3;
    public const double LooseTankGainK = 0.5;

    // Put back on its pipe it reads like its partner again (more than half of the way from the air) for this long.
    public const double LooseBackS = 30;
    public const double LooseBackShare = 0.6;

    // If the partner follows by this share of the fall, it was the coolant after all: believed again at once.
    public const double LooseFollowedShare = 0.4;
    public const double LooseFollowedWithinS = 240;

    // Exchanged: two offsets of 0.8 K and a clip-on that reads 2 % low make 2.8 K at most; practice shows 0.5 K of
    // honest inversion.
    public const double SwappedTankK = 3;
    public const double SwappedTankS = 300;

    // Below 4 °C the colder water is the lighter: no judging of the order of layers while all of it is near that.
    public const double SwappedTankLeastCelsius = 15;

    // The coil takes heat out of the coolant, the more the colder the tank: well above the tank, return cannot stay
    // above flow. Near the tank's temperature the coil takes little, and clip-ons with their offsets showed return 4 K
    // above flow by right (practice); this far above it they showed 2 K. Slugs pass within a minute.
    public const double SwappedLinesK = 3;
    public const double SwappedLinesS = 120;
    public const double SwappedLinesAboveTankK = 20;

    // Lines that stand with a closed valve or an air lock cool each at its own pace and may stand the wrong way round;
    // but then the tank gains nothing. A coil with 20 K to drive it gives about 1 K in two minutes. Standing lines cool
    // by several kelvin in that time (simulated: 6 K), and a slow probe on the tank still shows a gain.
    public const double SwappedTankGainK = 0.3;
    public const double SwappedLinesCoolK = 2;

    // After an implausible step a channel is in doubt as a witness for the order.
    public const double SwappedAfterStepS = 1800;

    // The right order by as much, for this long, takes it back.
    public const double SwappedBackS = 60;

    // Exchanged, told by coolant that chills the coil: it must be that much colder than both probes. In 46 practice
    // drives the lower probe then fell by 0.5 to 8.5 K in 17, and never did the upper fall by more than 0.25 K.
    public const double ChillBelowK = 3;
    public const double ChillFallK = 0.6;
    public const double ChillStandsK = 0.2;
    public const double ChillSmoothS = 30;

    // No reading for so long: 'missing' becomes 'stale', the last value says nothing any more. Lines and tray change
    // within seconds.
    public const double StaleLineS = 60;
    public const double StaleOtherS = 900;
}
