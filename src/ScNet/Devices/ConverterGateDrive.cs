using Fractions;
using ScNet.Kernel;
using ScNet.Stress;

namespace ScNet.Devices;

/// <summary>
/// The gate levels of every switch in the phases in which it is closed, and which nodes of the converter
/// itself can supply them, from the ideal potentials of each mode.
/// </summary>
/// <remarks>
/// A node serves where its potential minus the source's (p-type: the source's minus its own) is at least
/// the drive voltage at the lowest input voltage and at most the gate rating at the highest. The current
/// that drives the gate, and the node's ripple, are not looked at.
/// </remarks>
public sealed class ConverterGateDrive
{
    private ConverterGateDrive(ConverterRatings ratings)
    {
        Ratings = ratings;
        Switches = [.. ratings.Switches.Select((rating, s) => DriveOf(rating, s))];
    }

    /// <summary>The ratings, with the kind of each switch.</summary>
    public ConverterRatings Ratings { get; }

    /// <summary>What each switch needs; index as in <see cref="Converter.Switches"/>.</summary>
    public IReadOnlyList<SwitchGateDrive> Switches { get; }

    /// <summary>Finds the gate levels and supplies. Time is switches · nodes · phases · modes.</summary>
    /// <param name="ratings">The ratings of the converter.</param>
    public static ConverterGateDrive Of(ConverterRatings ratings)
    {
        ArgumentNullException.ThrowIfNull(ratings);
        return new ConverterGateDrive(ratings);
    }

    /// <summary>The converter and the count of its switches.</summary>
    public override string ToString() => $"{Ratings.Stress.Analysis.Converter.Name}: gate drive of {UnitText.Count(Switches.Count, "switch", "switches")}";

    private SwitchGateDrive DriveOf(SwitchRating rating, int @switch)
    {
        SwitchedNetwork network = Ratings.Stress.Analysis.Converter.Network;
        int first = network.SwitchFirst[@switch], second = network.SwitchSecond[@switch];
        List<GatePhase> phases = [];
        Interval terminals = default;
        foreach (ModeStress mode in Ratings.Stress.Modes)
        {
            foreach (int number in mode.Mode.ClosedPhases[@switch])
            {
                phases.Add(PhaseOf(rating.Kind, mode, number - 1, first));
            }

            Interval perVolt = mode.Spans.OverAllPhases(first).Hull(mode.Spans.OverAllPhases(second));
            terminals = terminals.Hull(Scaled(perVolt, mode.Input));
        }

        return new SwitchGateDrive(
            rating,
            [.. phases],
            terminals.IsBounded ? terminals.Low.ToDouble() : null,
            terminals.IsBounded ? terminals.High.ToDouble() : null,
            BodyNodes(rating.Kind, first, second));
    }

    private static GatePhase PhaseOf(SwitchKind kind, ModeStress mode, int phase, int source)
    {
        Converter converter = mode.Analysis.Converter;
        Fraction sign = kind.Polarity == DevicePolarity.NType ? Fraction.One : Fraction.MinusOne;
        List<GateSupply> supplies = [];
        for (int node = 0; node < converter.Nodes.Count; node++)
        {
            if (mode.Spans.FixedDifference(node, source, phase) is { } difference && SupplyOf(node, difference * sign) is { } supply)
            {
                supplies.Add(supply);
            }
        }

        VoltageSpan potential = mode.Spans.Span(source, phase);
        Interval gate = Scaled(potential.ToInterval(), mode.Input) + (kind.ExactDrive * sign);
        return new GatePhase(
            mode.Mode,
            phase + 1,
            potential,
            gate.IsBounded ? gate.Low.ToDouble() : null,
            gate.IsBounded ? gate.High.ToDouble() : null,
            [.. supplies]);

        GateSupply? SupplyOf(int node, Fraction share)
        {
            if (share <= Fraction.Zero)
            {
                return null;
            }

            Fraction from = kind.ExactDrive / share, to = kind.ExactGateRating / share;
            Fraction low = from > mode.Input.ExactMinimum ? from : mode.Input.ExactMinimum;
            Fraction high = to < mode.Input.ExactMaximum ? to : mode.Input.ExactMaximum;
            return low > high ? null : new GateSupply(
                converter.Nodes[node],
                CapacitorBetween(mode, phase, node, source),
                Quantity.Exact(share),
                low.ToDouble(),
                high.ToDouble(),
                low == mode.Input.ExactMinimum && high == mode.Input.ExactMaximum);
        }
    }

    // A capacitor with one plate on the node and the other one on the source by closed switches.
    private static Capacitor? CapacitorBetween(ModeStress mode, int phase, int node, int source)
    {
        SwitchedNetwork network = mode.Analysis.Converter.Network;
        int[] group = mode.Analysis.Topology.Forests[phase].Group;
        for (int c = 0; c < network.CapacitorCount; c++)
        {
            int a = network.BranchFirst[c], b = network.BranchSecond[c];
            if ((a == node && group[b] == group[source]) || (b == node && group[a] == group[source]))
            {
                return mode.Analysis.Converter.Capacitors[c];
            }
        }

        return null;
    }

    private string[] BodyNodes(SwitchKind kind, int first, int second)
    {
        Converter converter = Ratings.Stress.Analysis.Converter;
        return [.. converter.Nodes.Where((_, node) => Ratings.Stress.Modes.Count > 0 && Ratings.Stress.Modes.All(mode =>
            Enumerable.Range(0, converter.Phases.Count).All(phase => Serves(mode, node, first, phase) && Serves(mode, node, second, phase))))];

        bool Serves(ModeStress mode, int node, int terminal, int phase)
        {
            Interval difference = mode.Spans.FixedDifference(node, terminal, phase) is { } known
                ? Interval.Point(known)
                : mode.Spans.Potential(node, phase) - mode.Spans.Potential(terminal, phase);
            return difference.IsBounded
                && (kind.Polarity == DevicePolarity.NType ? difference.High <= Fraction.Zero : difference.Low >= Fraction.Zero);
        }
    }

    private static Interval Scaled(Interval perVolt, InputVoltageRange input) => !perVolt.IsBounded ? perVolt
        : Interval.Of(
            perVolt.Low * (perVolt.Low.IsNegative ? input.ExactMaximum : input.ExactMinimum),
            perVolt.High * (perVolt.High.IsNegative ? input.ExactMinimum : input.ExactMaximum));
}
