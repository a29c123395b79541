using ScNet.Analysis;
using ScNet.SteadyState;
using ScNet.SteadyState.Conduction;

namespace ScNet.Design.Losses;

/// <summary>What a converter loses at an operating point, by kind and by element.</summary>
/// <remarks>Output power and all losses add up to the input power.</remarks>
public sealed class LossBudget
{
    private readonly LossModel? _model;
    private readonly double _outputOhms;
    private readonly double[] _watts;
    private IReadOnlyList<Loss>? _losses;

    internal LossBudget(LossModel model, LossNote? note, OperatingPoint point, double outputVolts, double outputOhms, double[] watts)
    {
        _model = model;
        Sized = model.Sized;
        Notes = note is null ? model.Notes : [.. model.Notes, note];
        Point = point;
        OutputVolts = outputVolts;
        _outputOhms = outputOhms;
        _watts = watts;
        TotalLossWatts = watts.Sum();
    }

    internal LossBudget(SizedConverter sized, OperatingPoint point, double outputVolts, IReadOnlyList<Loss> losses, IReadOnlyList<LossNote> notes)
    {
        Sized = sized;
        Point = point;
        OutputVolts = outputVolts;
        _losses = losses;
        Notes = notes;
        _watts = new double[LossModel.KindCount];
        foreach (Loss loss in losses)
        {
            _watts[(int)loss.Kind] += loss.Watts;
        }

        TotalLossWatts = _watts.Sum();
    }

    /// <summary>How every kind of loss is computed, and where that comes from.</summary>
    public static IReadOnlyList<LossFormula> Formulas => LossFormulas.All;

    /// <summary>The converter with its devices.</summary>
    public SizedConverter Sized { get; }

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
    public IReadOnlyList<Loss> Losses => LazyInitializer.EnsureInitialized(ref _losses, () => _model!.LossesAt(Point, _outputOhms));

    /// <summary>What counts only by an assumption, or could not be counted; empty where everything is determined.</summary>
    public IReadOnlyList<LossNote> Notes { get; }

    /// <summary>The losses of a mode at an operating point by what serves it: <see cref="LossModel"/>, or waveforms where a current ends phases.</summary>
    /// <param name="sized">The converter with its devices.</param>
    /// <param name="analysis">The analysis of one of its modes, whatever its values.</param>
    /// <param name="point">The operating point.</param>
    /// <exception cref="ArgumentException">The analysis is of a converter of another topology.</exception>
    /// <exception cref="ScNetException">The network is too large, or has no periodic solution.</exception>
    public static LossBudget Of(SizedConverter sized, ModeAnalysis analysis, OperatingPoint point)
    {
        ArgumentNullException.ThrowIfNull(sized);
        ArgumentNullException.ThrowIfNull(analysis);
        return analysis.Mode.UntilZeroPhases.Any(p => p.Count > 0)
            ? OfWaveforms(sized, sized.Converter.Modes[analysis.Mode.Name], point)
            : LossModel.Of(sized, analysis).At(point);
    }

    /// <summary>
    /// The losses read off the exact waveforms of a period, for modes in which a current ends phases or body diodes carry inductors through dead times of the
    /// netlist, which have no <see cref="LossModel"/>; other modes are served as well, at more cost.
    /// </summary>
    /// <remarks>
    /// What resistances dissipate is conduction, charge sharing within it. Gates, junctions and plates count by the steps of the waveforms from
    /// phase to phase; what floats keeps its potential, which the notes name. The process's dead time counts unless the netlist has diodes. Derivation:
    /// docs/theory/losses.md, "Where a current ends phases".
    /// </remarks>
    /// <param name="sized">The converter with its devices.</param>
    /// <param name="mode">One of its modes.</param>
    /// <param name="point">The operating point.</param>
    /// <exception cref="ArgumentException">The mode is not one of the converter's.</exception>
    /// <exception cref="ScNetException">There is no periodic solution: <see cref="DiagnosticCodes.NoPeriodicState"/>.</exception>
    public static LossBudget OfWaveforms(SizedConverter sized, Mode mode, OperatingPoint point)
    {
        ArgumentNullException.ThrowIfNull(sized);
        ArgumentNullException.ThrowIfNull(mode);
        ArgumentNullException.ThrowIfNull(point);
        return WaveformLosses.Of(sized, ConductionModel.Of(sized.Plain, mode).At(point).Steady);
    }

    /// <summary>The loss of a kind in watts (W), of all elements together.</summary>
    /// <param name="kind">The kind.</param>
    public double WattsOf(LossKind kind) => _watts[(int)kind];

    /// <summary>The operating point, the output voltage, the efficiency and the losses of every kind.</summary>
    public override string ToString() =>
        $"{Point}: {UnitText.Of(OutputVolts, "V")} output, {(Efficiency is { } efficiency ? UnitText.Percent(efficiency) : "no efficiency")}; {string.Join(", ", Enum.GetValues<LossKind>().Where(k => WattsOf(k) != 0).Select(k => $"{k} {UnitText.Of(WattsOf(k), "W")}"))}";
}
