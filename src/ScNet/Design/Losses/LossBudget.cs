using ScNet.SteadyState;

namespace ScNet.Design.Losses;

/// <summary>What a converter loses at an operating point, by kind and by element.</summary>
/// <remarks>Output power and all losses add up to the input power.</remarks>
public sealed class LossBudget
{
    private readonly LossModel _model;
    private readonly double _outputOhms;
    private readonly double[] _watts;
    private IReadOnlyList<Loss>? _losses;

    internal LossBudget(LossModel model, OperatingPoint point, double outputVolts, double outputOhms, double[] watts)
    {
        _model = model;
        Point = point;
        OutputVolts = outputVolts;
        _outputOhms = outputOhms;
        _watts = watts;
        TotalLossWatts = watts.Sum();
    }

    /// <summary>How every kind of loss is computed, and where that comes from.</summary>
    public static IReadOnlyList<LossFormula> Formulas => LossFormulas.All;

    /// <summary>The converter with its devices.</summary>
    public SizedConverter Sized => _model.Sized;

    /// <summary>The operating point.</summary>
    public OperatingPoint Point { get; }

    /// <summary>The average output voltage in volts (V): that without load less impedance times load current.</summary>
    public double OutputVolts { get; }

    /// <summary>Power into the load in watts (W).</summary>
    public double OutputWatts => OutputVolts * Point.LoadCurrentAmperes;

    /// <summary>Power from the input in watts (W), also what rails and control draw: output power and all losses.</summary>
    public double InputWatts => OutputWatts + TotalLossWatts;

    /// <summary>All losses in watts (W).</summary>
    public double TotalLossWatts { get; }

    /// <summary>Output power per input power; null where either is not positive.</summary>
    public double? Efficiency => OutputWatts > 0 && InputWatts > 0 ? OutputWatts / InputWatts : null;

    /// <summary>Every loss that is not zero, by kind, then in the order of the elements. Found when first asked for.</summary>
    public IReadOnlyList<Loss> Losses => LazyInitializer.EnsureInitialized(ref _losses, () => _model.LossesAt(Point, _outputOhms));

    /// <summary>What counts only by an assumption, or could not be counted; empty where everything is determined.</summary>
    public IReadOnlyList<LossNote> Notes => _model.Notes;

    /// <summary>The loss of a kind in watts (W), of all elements together.</summary>
    /// <param name="kind">The kind.</param>
    public double WattsOf(LossKind kind) => _watts[(int)kind];

    /// <summary>The operating point, the output voltage, the efficiency and the losses of every kind.</summary>
    public override string ToString() =>
        $"{Point}: {UnitText.Of(OutputVolts, "V")} output, {(Efficiency is { } efficiency ? UnitText.Percent(efficiency) : "no efficiency")}; {string.Join(", ", Enum.GetValues<LossKind>().Where(k => WattsOf(k) != 0).Select(k => $"{k} {UnitText.Of(WattsOf(k), "W")}"))}";
}
