namespace OnboardHeat.Simulation.Physics;

/// <summary>
/// The hot-water tank as equal layers, bottom first. Each layer keeps its heat as the state and its temperature
/// follows, so that no step can make or lose heat. Warm water under cold rises at a finite pace; a draw pushes the
/// water up and stirs the bottom.
/// </summary>
internal sealed class LayeredTank
{
    private readonly TankTraits _traits;
    private readonly HeatBook _book;
    private readonly double[] _heatJ;
    private readonly double[] _celsius;
    private readonly double[] _lossShares;
    private readonly double[] _stirring;
    private readonly double[] _pooledJ;
    private readonly int[] _pooledCount;
    private readonly double _layerLitres;
    private readonly double _linearJPerK;
    private readonly double _squareJPerK2;
    private readonly double _conductionWPerK;
    private readonly double _densestJ;

    public LayeredTank(TankTraits traits, HeatBook book)
    {
        _traits = traits;
        _book = book;
        var count = traits.LayerCount;
        _heatJ = new double[count];
        _celsius = new double[count];
        _layerLitres = traits.VolumeLitres / count;
        _linearJPerK = (_layerLitres * Fluids.WaterAtZeroJPerLitreK) + (traits.SteelKg * Fluids.SteelJPerKgK / count);
        _squareJPerK2 = _layerLitres * Fluids.WaterSlopeJPerLitreK2 / 2;
        var heightM = traits.HeightM;
        _conductionWPerK = traits.ConductionWPerMK * (traits.VolumeLitres / 1000 / heightM) / (heightM / count);
        _densestJ = HeatAt(4);
        _lossShares = LossShares(traits);
        _stirring = new double[count];
        _pooledJ = new double[count];
        _pooledCount = new int[count];
        for (var i = 0; i < count; i++)
        {
            _stirring[i] = traits.StirringShare * Math.Max(0, 1 - (i / (count * traits.StirringDepthShare)));
        }
    }

    /// <summary>Temperature of each layer, bottom first.</summary>
    public ReadOnlySpan<double> Celsius => _celsius;

    public int Count => _heatJ.Length;

    public double TopCelsius => _celsius[^1];

    /// <summary>
    /// All heat above 0 °C in water and steel, joules, as the balance counts it (the space is kept full).
    /// </summary>
    public double HeatJ
    {
        get
        {
            double sum = 0;
            foreach (var heat in _heatJ)
            {
                sum += heat;
            }

            return sum;
        }
    }

    /// <summary>Water temperature at a share of the height, 0 bottom to 1 top, between the middles of layers.</summary>
    public double CelsiusAt(double heightShare)
    {
        var place = Math.Clamp((heightShare * Count) - 0.5, 0, Count - 1);
        var below = Math.Min((int)place, Count - 2);
        return _celsius[below] + ((place - below) * (_celsius[below + 1] - _celsius[below]));
    }

    /// <summary>
    /// Fills the tank: <paramref name="bottomCelsius"/> below and <paramref name="topCelsius"/> above a boundary one
    /// layer thick.
    /// </summary>
    public void Fill(double bottomCelsius, double topCelsius, double boundaryShare)
    {
        for (var i = 0; i < Count; i++)
        {
            var above = Math.Clamp(i + 1 - (boundaryShare * Count), 0, 1);
            _heatJ[i] = HeatAt(bottomCelsius + (above * (topCelsius - bottomCelsius)));
        }

        Settle();
    }

    /// <summary>
    /// Heat into one layer from coil or element, joules; <see cref="Settle"/> makes it a temperature.
    /// </summary>
    public void AddHeat(int layer, double joules) => _heatJ[layer] += joules;

    /// <summary>Standing: loss to the air around, conduction between layers, warm water rising.</summary>
    public void Stand(double stepS, double airCelsius, bool isTravelling)
    {
        // A lagged wall's outer film loses a little more per kelvin when it is hotter (natural convection).
        var excessK = (TopCelsius + _celsius[0]) / 2 - airCelsius;
        var lossWPerK = _traits.LossWPerK * (1 + (_traits.LossRiseShare * (excessK - 40) / 40));
        var lost = 0.0;
        for (var i = 0; i < Count; i++)
        {
            var joules = lossWPerK * _lossShares[i] * (_celsius[i] - airCelsius) * stepS;
            _heatJ[i] -= joules;
            lost += joules;
        }

        _book.TankLoss(lost);
        var conductionWPerK = _conductionWPerK * (isTravelling ? _traits.TravelFactor : 1);
        for (var i = 1; i < Count; i++)
        {
            var joules = conductionWPerK * (_celsius[i] - _celsius[i - 1]) * stepS;
            _heatJ[i] -= joules;
            _heatJ[i - 1] += joules;
        }

        Rise(stepS);
        Settle();
    }

    /// <summary>
    /// Draws <paramref name="litres"/> of hot water off the top; as much cold enters below. Gives the heat taken,
    /// joules above 0 °C.
    /// </summary>
    public double Draw(double litres, double coldCelsius)
    {
        var taken = 0.0;
        var parts = 1 + (int)(litres / (0.5 * _layerLitres));
        var partLitres = litres / parts;
        for (var part = 0; part < parts; part++)
        {
            var outJ = partLitres * Fluids.WaterJPerLitre(TopCelsius);
            taken += outJ;
            for (var i = Count - 1; i > 0; i--)
            {
                var upJ = partLitres * Fluids.WaterJPerLitre(_celsius[i - 1]);
                _heatJ[i] += upJ - outJ;
                outJ = upJ;
            }

            var coldJ = partLitres * Fluids.WaterJPerLitre(coldCelsius);
            _heatJ[0] += coldJ - outJ;
            taken -= coldJ;
            Stir(partLitres);
            Settle();
        }

        _book.Out(taken);
        return taken;
    }

    /// <summary>Makes temperatures of the heat in each layer: the root of heat = linear t - square t².</summary>
    public void Settle()
    {
        for (var i = 0; i < _heatJ.Length; i++)
        {
            var root = Math.Sqrt((_linearJPerK * _linearJPerK) - (4 * _squareJPerK2 * _heatJ[i]));
            _celsius[i] = 2 * _heatJ[i] / (_linearJPerK + root);
        }
    }

    /// <summary>Takes over the layers of another tank with the same traits, for a draw that is only tried.</summary>
    public void CopyFrom(LayeredTank other)
    {
        other._heatJ.CopyTo(_heatJ, 0);
        other._celsius.CopyTo(_celsius, 0);
    }

    private double HeatAt(double celsius) => celsius * (_linearJPerK - (_squareJPerK2 * celsius));

    /// <summary>
    /// Layers that lie lighter below heavier are pooled to their common heat, as far up as they rise; the tank goes
    /// towards that pooled state with the time constant of a plume. What heats 1 kW then stands at most a kelvin above
    /// its neighbours.
    /// </summary>
    private void Rise(double stepS)
    {
        var blocks = 0;
        for (var i = 0; i < Count; i++)
        {
            _pooledJ[blocks] = _heatJ[i];
            _pooledCount[blocks++] = 1;
            while (blocks > 1 && Lightness(_pooledJ[blocks - 2]) > Lightness(_pooledJ[blocks - 1]))
            {
                var (below, above) = (_pooledCount[blocks - 2], _pooledCount[blocks - 1]);
                _pooledJ[blocks - 2] =
                    ((below * _pooledJ[blocks - 2]) + (above * _pooledJ[blocks - 1])) / (below + above);
                _pooledCount[blocks - 2] += above;
                blocks--;
            }
        }

        if (blocks == Count)
        {
            return;
        }

        var share = stepS / (_traits.RisingS + stepS);
        for (int block = 0, i = 0; block < blocks; block++)
        {
            for (var end = i + _pooledCount[block]; i < end; i++)
            {
                _heatJ[i] += share * (_pooledJ[block] - _heatJ[i]);
            }
        }
    }

    /// <summary>
    /// Rises with temperature above 4 °C and falls with it below, where the colder water is the lighter.
    /// </summary>
    private double Lightness(double heatJ) => Math.Abs(heatJ - _densestJ);

    private void Stir(double litres)
    {
        for (var i = 0; i < Count - 1; i++)
        {
            var share = Math.Min(0.45, _stirring[i] * litres / _layerLitres);
            if (share <= 0)
            {
                return;
            }

            var joules = share * (_heatJ[i + 1] - _heatJ[i]);
            _heatJ[i] += joules;
            _heatJ[i + 1] -= joules;
        }
    }

    private static double[] LossShares(TankTraits traits)
    {
        // The ends and the fittings at the top lose more than the middle.
        var shares = new double[traits.LayerCount];
        double sum = 0;
        for (var i = 0; i < shares.Length; i++)
        {
            shares[i] = i == 0 ? 2 : i == shares.Length - 1 ? 2 + traits.FittingsShare : 1;
            sum += shares[i];
        }

        for (var i = 0; i < shares.Length; i++)
        {
            shares[i] /= sum;
        }

        return shares;
    }
}
