using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Design.Losses;

/// <summary>The losses of one mode of a sized converter, prepared once, then asked at any operating point.</summary>
/// <remarks>
/// What the load takes is exact: the output impedance is that of the periodic steady state. What swings whatever the load
/// is, gates, junctions and plates, counts by the ideal voltages, each by itself. With inductors the ripple is straight lines and
/// the capacitors' voltages stand still. Cost: a polynomial per kind of loss, after one pass over elements and phases. Safe on
/// many threads. Derivation and sources: docs/theory/losses.md.
/// </remarks>
public sealed class LossModel
{
    /// <summary>The number of kinds of losses.</summary>
    public const int KindCount = 12;

    private const double WorthANote = 0.02;

    private readonly LossTerm[] _terms;
    private readonly (LossKind Kind, LossPolynomial Watts)[] _kinds;
    private readonly (string Name, double Share)[] _sharing;
    private readonly SteadyStateModel _steadyState;
    private readonly DiodeTerm[] _diodes;
    private readonly CoreTerm[] _cores;
    private readonly double _deadSeconds;
    private readonly double _fastOhms;

    private LossModel(SizedConverter sized, ModeAnalysis analysis)
    {
        Sized = sized;
        Analysis = analysis;
        _steadyState = SteadyStateModel.Of(analysis);
        _fastOhms = analysis.CarriesLoad ? analysis.FastSwitchingLimit.Ohms : 0;
        LossTerms losses = LossTerms.Of(sized, analysis);
        _terms = [.. losses.Terms];
        _kinds = [.. _terms.GroupBy(t => t.Kind).Select(g => (g.Key, g.Aggregate(default(LossPolynomial), (sum, term) => sum + term.Watts)))];
        _diodes = [.. losses.Diodes];
        _cores = [.. losses.Cores];
        _deadSeconds = sized.Process.DeadTimeSeconds;
        _sharing = [.. SharingShares.Of(analysis)];
        Notes = losses.Notes;
    }

    /// <summary>The converter with its devices.</summary>
    public SizedConverter Sized { get; }

    /// <summary>The analysis of the mode, with the values of the sized converter and without its parasitic capacitances, which count by formula.</summary>
    public ModeAnalysis Analysis { get; }

    /// <summary>The exact output impedance.</summary>
    public OutputImpedance Impedance => _steadyState.Impedance;

    /// <summary>What counts only by an assumption, or cannot be counted; empty where everything is determined.</summary>
    public IReadOnlyList<LossNote> Notes { get; }

    /// <summary>Prepares a mode.</summary>
    /// <param name="sized">The converter with its devices. Its on-resistances, wiring included, are what conducts; the devices' widths are what is driven.</param>
    /// <param name="analysis">The analysis of one of its modes; with other component values it serves as well.</param>
    /// <exception cref="ArgumentException">The analysis is of a converter of another topology, or the mode has phases that a current ends.</exception>
    /// <exception cref="ScNetException">The network is too large: <see cref="DiagnosticCodes.SteadyStateTooLarge"/>.</exception>
    public static LossModel Of(SizedConverter sized, ModeAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(sized);
        ArgumentNullException.ThrowIfNull(analysis);
        if (analysis.Mode.UntilZeroPhases.Any(p => p.Count > 0))
        {
            throw new ArgumentException($"Expected a mode of fixed phases, but a current ends phases of '{analysis.Mode}': its losses follow from waveforms, LossBudget.OfWaveforms.", nameof(analysis));
        }

        Converter plain = sized.Plain;
        return new LossModel(sized, ReferenceEquals(analysis.Converter, plain) ? analysis : analysis.WithValuesOf(plain));
    }

    /// <summary>The losses at an operating point; the output voltage follows from the load. With inductors it takes the exact periodic solution, else microseconds.</summary>
    /// <param name="point">The operating point.</param>
    public LossBudget At(OperatingPoint point)
    {
        ArgumentNullException.ThrowIfNull(point);
        double ohms, ratio;
        TwoPortPoint? exact = null;
        if (Sized.Converter.Inductors.Count > 0)
        {
            exact = _steadyState.TwoPort.At(point.FrequencyHz);
            (ohms, ratio) = (exact.Ohms, exact.Ratio);
        }
        else
        {
            (ohms, ratio) = (Impedance.Ohms(point.FrequencyHz), Analysis.Ratio.ToDouble());
        }

        var watts = new double[KindCount];
        WattsAt(point.InputVoltageVolts, point.LoadCurrentAmperes, point.FrequencyHz, ohms, watts);
        return new LossBudget(this, Bent(exact, point, watts), point, (ratio * point.InputVoltageVolts) - (ohms * point.LoadCurrentAmperes), ohms, watts);
    }

    // what straight lines miss where the period is long for the resistances or the capacitors
    private static LossNote? Bent(TwoPortPoint? exact, OperatingPoint point, double[] watts)
    {
        if (exact is null)
        {
            return null;
        }

        (double volts, double amperes) = (point.InputVoltageVolts, point.LoadCurrentAmperes);
        double lost = (exact.Ohms * amperes * amperes) + ((exact.CurrentRatio - exact.Ratio) * volts * amperes) + (exact.InputSiemens * volts * volts);
        double counted = watts[(int)LossKind.Conduction] + watts[(int)LossKind.ChargeSharing] + watts[(int)LossKind.Windings];
        return Math.Abs(counted - lost) <= WorthANote * lost ? null : new LossNote(
            LossKind.Conduction, string.Empty, true,
            $"with ripple as straight lines: {EngineeringNumber.Of(counted, "W")} in all resistances, of which the exact solution loses {EngineeringNumber.Of(lost, "W")}");
    }

    /// <summary>The loss of every kind, without allocation.</summary>
    /// <param name="inputVolts">Input voltage in volts (V).</param>
    /// <param name="loadAmperes">Load current in amperes (A).</param>
    /// <param name="frequencyHz">Switching frequency in hertz (Hz), above zero.</param>
    /// <param name="outputOhms">The output impedance in ohms (Ω) at this frequency.</param>
    /// <param name="wattsByKind">Receives the losses in watts (W), by the number of the kind; at least <see cref="KindCount"/> long.</param>
    /// <exception cref="ArgumentException">The span is too short.</exception>
    public void WattsAt(double inputVolts, double loadAmperes, double frequencyHz, double outputOhms, Span<double> wattsByKind)
    {
        if (wattsByKind.Length < KindCount)
        {
            throw new ArgumentException($"Expected room for {KindCount} losses, but got {wattsByKind.Length}.", nameof(wattsByKind));
        }

        wattsByKind[..KindCount].Clear();
        foreach ((LossKind kind, LossPolynomial watts) in _kinds)
        {
            wattsByKind[(int)kind] = watts.At(inputVolts, loadAmperes, frequencyHz);
        }

        foreach (DiodeTerm diode in _diodes)
        {
            wattsByKind[(int)LossKind.BodyDiodes] += diode.At(inputVolts, loadAmperes, frequencyHz, _deadSeconds);
        }

        foreach (CoreTerm core in _cores)
        {
            wattsByKind[(int)LossKind.Cores] += core.At(inputVolts, frequencyHz);
        }

        wattsByKind[(int)LossKind.ChargeSharing] = SharingWatts(outputOhms, loadAmperes);
    }

    /// <summary>The mode and the area.</summary>
    public override string ToString() => $"{Sized}, mode {Analysis.Mode}";

    /// <summary>Every loss of every element that is not zero, by kind, then in the order of the elements.</summary>
    internal IReadOnlyList<Loss> LossesAt(OperatingPoint point, double outputOhms)
    {
        (double volts, double amperes, double hertz) = (point.InputVoltageVolts, point.LoadCurrentAmperes, point.FrequencyHz);
        double sharing = SharingWatts(outputOhms, amperes);
        List<Loss> losses = new(_terms.Length + _sharing.Length + _diodes.Length);
        int next = 0;
        for (LossKind kind = 0; (int)kind < KindCount; kind++)
        {
            // the terms stand in the order of the kinds
            for (; next < _terms.Length && _terms[next].Kind == kind; next++)
            {
                Add(kind, _terms[next].Element, _terms[next].Watts.At(volts, amperes, hertz));
            }

            foreach ((string name, double share) in kind == LossKind.ChargeSharing ? _sharing : [])
            {
                Add(kind, name, share * sharing);
            }

            foreach (IGrouping<string, DiodeTerm> diodes in kind == LossKind.BodyDiodes ? _diodes.GroupBy(d => d.Element) : [])
            {
                Add(kind, diodes.Key, diodes.Sum(d => d.At(volts, amperes, hertz, _deadSeconds)));
            }

            foreach (CoreTerm core in kind == LossKind.Cores ? _cores : [])
            {
                Add(kind, core.Element, core.At(volts, hertz));
            }
        }

        return [.. losses];

        void Add(LossKind kind, string element, double watts)
        {
            if (watts != 0)
            {
                losses.Add(new Loss(kind, element, watts));
            }
        }
    }

    // never below the fast limit but by rounding
    private double SharingWatts(double outputOhms, double amperes) => Math.Max(0, outputOhms - _fastOhms) * amperes * amperes;
}
