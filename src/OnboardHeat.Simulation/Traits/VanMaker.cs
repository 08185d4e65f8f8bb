using OnboardHeat.Core.Scans;

namespace OnboardHeat.Simulation;

/// <summary>Makes a van from a seed. The ranges are those of the trait records' comments.</summary>
internal static class VanMaker
{
    public static VanTraits Make(ulong seed)
    {
        var chance = new Chance(seed, 11);
        var litres = chance.Between(10, 40);
        var bore = chance.Between(13, 19);
        var lagging = chance.Between(0.35, 1.2);
        return new VanTraits
        {
            Tank = Tank(chance, litres),
            Coil = Coil(chance, litres),
            FlowLine = Line(chance, bore, lagging),
            ReturnLine = Line(chance, bore, lagging),
            FlowSpot = Spot(chance),
            ReturnSpot = Spot(chance),
            Engine = Engine(chance),
            Shelter = Shelter(chance),
            LineHoldsShare = chance.Between(0.1, 1),
            SprayOnSpotWPerK = chance.Between(0, 6),
            TopProbeHeightShare = chance.Between(0.75, 0.98),
            MiddleProbeHeightShare = chance.Between(0.4, 0.6),
            BottomProbeHeightShare = chance.Between(0.03, 0.25),
            CrankLosesBusShare = chance.Happens(0.4) ? chance.Between(0.2, 1) : 0,
            Probes = Probes(chance),
        };
    }

    private static TankTraits Tank(Chance chance, double litres) => new()
    {
        VolumeLitres = litres,
        SteelKg = (2 + (0.14 * litres)) * chance.Between(0.8, 1.25),
        HeightM = 0.42 * Math.Cbrt(litres / 24) * chance.Between(0.8, 1.4),
        LayerCount = chance.Whole(8, 20),

        // Loss grows with the surface, litres^2/3: 0.5 to 1 W/K at 20 litres.
        LossWPerK = chance.Between(0.5, 1.0) * Math.Cbrt(litres * litres / 400),
        LossRiseShare = chance.Between(0, 0.1),
        FittingsShare = chance.Between(0, 2),
        ConductionWPerMK = chance.Between(0.9, 2.5),
        TravelFactor = chance.Between(1.5, 8),
        RisingS = chance.Between(3, 20),
        StirringShare = chance.Between(0, 1.5),
        StirringDepthShare = chance.Between(0.2, 0.7),
        ColdCelsius = chance.Between(5, 18),
        ElementW = chance.Between(150, 800),
        ElementHeightShare = chance.Between(0.05, 0.4),
        ElementCelsius = chance.Between(52, 68),
    };

    private static CoilTraits Coil(Chance chance, double litres)
    {
        var from = chance.Between(0, 0.1);
        return new CoilTraits
        {
            ConductanceWPerK = chance.Between(30, 60) * Math.Sqrt(litres / 24),
            VolumeLitres = chance.Between(0.25, 0.8),
            FromHeightShare = from,
            ToHeightShare = from + chance.Between(0.3, 0.8),
            IsFedFromTop = chance.Happens(0.6),
        };
    }

    private static LineTraits Line(Chance chance, double boreMm, double lagging)
    {
        var length = chance.Between(3, 7);
        return new LineTraits
        {
            LengthM = length,
            VolumeLitres = length * Math.PI / 4 * boreMm * boreMm / 1000,
            WallJPerMK = chance.Between(350, 800),
            LossWPerMK = lagging,
        };
    }

    private static PipeSpotTraits Spot(Chance chance)
    {
        var coupling = chance.Between(5, 14);
        return new PipeSpotTraits
        {
            CapacityJPerK = chance.Between(50, 180),
            FlowCouplingWPerK = coupling,
            AirCouplingWPerK = coupling * chance.Between(0.01, 0.07),
            TankCouplingWPerK = chance.Between(0.03, 0.3),
            IsOnTankSide = chance.Happens(0.6),
        };
    }

    private static EngineTraits Engine(Chance chance) => new()
    {
        MetalJPerK = chance.Between(45_000, 85_000),
        JacketLitres = chance.Between(3, 5.5),
        RadiatorLitres = chance.Between(2, 4),
        RadiatorJPerK = chance.Between(3_500, 7_000),
        BottleLitres = chance.Between(0.7, 1.8),
        CoolantShare = chance.Between(0.19, 0.28),
        BlockLossWPerK = chance.Between(11, 20),
        ThermostatCelsius = chance.Between(80, 92),
        ThermostatSpanK = chance.Between(7, 14),
        HysteresisK = chance.Between(3, 8),
        WaxLagS = chance.Between(5, 25),
        ThermostatLeakShare = chance.Between(0.002, 0.03),
        TankFlowLitresPerMinute = chance.Between(3, 11),
        IdleFlowShare = chance.Between(0.25, 0.6),
        HeaterWPerK = chance.Between(60, 160),
        VanKg = chance.Between(2_700, 3_900),
        StopsAtLights = chance.Happens(0.25),
        SelfFlowLitresPerMinuteK = chance.Happens(0.4) ? 0 : chance.Between(0.0005, 0.004),
    };

    private static ShelterTraits Shelter(Chance chance) => new()
    {
        CapacityJPerK = chance.Between(20_000, 80_000),
        LossWPerK = chance.Between(8, 22),
        HeaterShare = chance.Between(0.01, 0.1),
        SunW = chance.Between(0, 250),
        NearTankShare = chance.Between(0, 0.08),
        TrayJPerK = chance.Between(1_200, 5_000),
        TrayWPerK = chance.Between(2, 7),
        TrayOutsideShare = chance.Between(0, 0.7),
        SprayOnTrayShare = chance.Happens(0.25) ? 0 : chance.Between(0.2, 0.9),
        SprayOnAirShare = chance.Between(0, 0.25),
        WetContactLitres = chance.Between(0.02, 0.15),
        DryingS = chance.Between(600, 7_200),
    };

    private static ProbeTraits[] Probes(Chance chance)
    {
        var probes = new ProbeTraits[Channels.Count];
        foreach (var channel in Channels.All)
        {
            var isOnTank = channel is Channel.TankTop or Channel.TankMiddle or Channel.TankBottom;
            var lag = channel switch
            {
                Channel.TankTop or Channel.TankMiddle or Channel.TankBottom => chance.Between(8, 60),
                Channel.Surroundings => chance.Between(20, 60),
                Channel.EngineCoolant => chance.Between(2, 6),
                _ => chance.Between(3, 20),
            };
            probes[(int)channel] = new ProbeTraits(
                Math.Clamp(0.3 * chance.Normal(), -0.8, 0.8), lag, isOnTank ? chance.Between(0.97, 1) : 1,
                chance.Between(0.005, 0.04));
        }

        return probes;
    }
}
