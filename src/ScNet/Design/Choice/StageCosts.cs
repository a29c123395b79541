using ScNet.Analysis;
using ScNet.Design.Losses;
using ScNet.Design.Sizing;
using ScNet.Devices;

namespace ScNet.Design.Choice;

/// <summary>
/// What the elements of a stage with inductors lose at a duty, per unit of their values: what conducts goes with one over a conductance
/// or a capacitance, the rest in proportion to it.
/// </summary>
internal sealed class StageCosts
{
    private readonly LossPolynomial[][] _conduction;
    private readonly LossPolynomial[][] _rest;

    private StageCosts(ModeAnalysis analysis, LossPolynomial[][] conduction, LossPolynomial[][] rest, LossPolynomial others, double diodeVoltSeconds, IReadOnlyList<CoreTerm> cores)
    {
        Cores = cores;
        DiodeVoltSeconds = diodeVoltSeconds;
        Analysis = analysis;
        _conduction = conduction;
        _rest = rest;
        Others = others;
    }

    /// <summary>The analysis at the duty.</summary>
    public ModeAnalysis Analysis { get; }

    /// <summary>What body diodes lose per ampere of load and hertz, without ripple, in volt seconds.</summary>
    public double DiodeVoltSeconds { get; }

    /// <summary>The cores of inductors.</summary>
    public IReadOnlyList<CoreTerm> Cores { get; }

    /// <summary>What belongs to no capacitor and no switch.</summary>
    public LossPolynomial Others { get; }

    /// <summary>Asks the loss model for every kind of device, with a farad and a siemens.</summary>
    public static StageCosts Of(ModeAnalysis analysis, Process process, ElementOptions options, IReadOnlyList<InductorDevice> inductors)
    {
        Converter converter = analysis.Converter;
        int capacitors = converter.Capacitors.Count, count = capacitors + converter.Switches.Count;
        int[] optionCounts = [.. options.Capacitors.Select(o => o.Length), .. options.Switches.Select(o => o.Length)];
        LossPolynomial[][] conduction = [.. optionCounts.Select(n => new LossPolynomial[n])], rest = [.. optionCounts.Select(n => new LossPolynomial[n])];
        Dictionary<string, int> places = converter.Capacitors.Select(c => c.Name).Concat(converter.Switches.Select(s => s.Name))
            .Select((name, e) => (name, e)).ToDictionary(p => p.name, p => p.e, StringComparer.Ordinal);
        LossPolynomial others = default;
        double diodes = 0;
        IReadOnlyList<CoreTerm> cores = [];
        for (int option = 0; option < optionCounts.Max(); option++)
        {
            SizedConverter unit = SizedValues.Build(
                converter, process,
                [.. options.Capacitors.Select(o => o[Math.Min(option, o.Length - 1)])], [.. options.Switches.Select(o => o[Math.Min(option, o.Length - 1)])],
                [.. Enumerable.Repeat(1.0, capacitors)], [.. Enumerable.Repeat(1.0, count - capacitors)], inductors);
            others = default;
            LossTerms losses = LossTerms.Of(unit, analysis.WithValuesOf(unit.Converter));
            cores = losses.Cores;
            diodes = process.DeadTimeSeconds * losses.Diodes.Sum(d => d.DiodeVolts * Math.Abs(d.PerAmpere));
            foreach (LossTerm term in losses.Terms)
            {
                if (!places.TryGetValue(term.Element, out int element))
                {
                    others += term.Watts;
                }
                else if (option < optionCounts[element])
                {
                    // the wiring adds to the ohm that stands for the device
                    bool conducts = term.Kind == LossKind.Conduction;
                    LossPolynomial[] own = (conducts ? conduction : rest)[element];
                    own[option] += conducts && element >= capacitors ? term.Watts.Times(1 / (1 + process.WiringOhms)) : term.Watts;
                }
            }
        }

        return new StageCosts(analysis, conduction, rest, others, diodes, cores);
    }

    /// <summary>What conducts, at one farad or one siemens.</summary>
    public LossPolynomial Conduction(int element, int option) => _conduction[element][option];

    /// <summary>All else, at one farad or one siemens.</summary>
    public LossPolynomial Rest(int element, int option) => _rest[element][option];
}
