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
/// the drive voltage at the minimum input voltage and at most the gate rating at the maximum. The current
/// that drives the gate, and the node's ripple, are not looked at.
/// </remarks>
public sealed class ConverterGateDrive
{
    private ConverterGateDrive(ConverterRatings ratings)
    {
        Ratings = ratings;
        GateNodes[][] nodes = [.. ratings.Stress.Modes.Select(mode =>
            mode.Analysis.Converter.Phases.Select((_, phase) => new GateNodes(mode, phase)).ToArray())];
        Switches = new NamedList<SwitchGateDrive>(
            [.. ratings.Switches.Select((rating, s) => DriveOf(rating, s, nodes))], ratings.Stress.Analysis.Converter.Switches.Names);
    }

    /// <summary>The ratings, with the device of each switch.</summary>
    public ConverterRatings Ratings { get; }

    /// <summary>What each switch needs, by name and by position as in <see cref="Converter.Switches"/>.</summary>
    public NamedList<SwitchGateDrive> Switches { get; }

    /// <summary>Finds the gate levels and supplies. Time is modes · phases · (nodes + switches), each with a logarithm; supplies and body nodes are listed when asked for.</summary>
    /// <param name="ratings">The ratings of the converter.</param>
    public static ConverterGateDrive Of(ConverterRatings ratings)
    {
        ArgumentNullException.ThrowIfNull(ratings);
        return new ConverterGateDrive(ratings);
    }

    /// <summary>The converter and the count of its switches.</summary>
    public override string ToString() => $"{Ratings.Stress.Analysis.Converter.Name}: gate drive of {UnitText.Count(Switches.Count, "switch", "switches")}";

    private SwitchGateDrive DriveOf(SwitchRating rating, int @switch, GateNodes[][] nodes)
    {
        SwitchedNetwork network = Ratings.Stress.Analysis.Converter.Network;
        int first = network.SwitchFirst[@switch], second = network.SwitchSecond[@switch];
        List<GatePhase> phases = [];
        Interval<Fraction> terminals = Intervals.Empty<Fraction>();
        foreach ((ModeStress mode, GateNodes[] nodesOfMode) in Ratings.Stress.Modes.Zip(nodes))
        {
            foreach (int number in mode.Mode.ClosedPhases[@switch])
            {
                VoltageSpan potential = mode.NodePotentials[first][number];
                Fraction drive = rating.Device.Polarity == DevicePolarity.NType ? rating.Device.ExactDrive : -rating.Device.ExactDrive;
                phases.Add(new GatePhase(
                    mode.Mode,
                    number,
                    potential,
                    InputInterval.Scale(potential.PerVoltOfInput, mode.ExactInput).Plus(drive).ToDouble(),
                    nodesOfMode[number - 1].HasSupply(rating.Device, first),
                    () => nodesOfMode[number - 1].SuppliesOf(rating.Device, first)));
            }

            terminals = terminals.Hull(InputInterval.Scale(mode.OverAllPhases[first].Hull(mode.OverAllPhases[second]), mode.ExactInput));
        }

        return new SwitchGateDrive(rating, [.. phases], terminals.ToDouble(), () => BodyNodes(rating.Device, first, second), () => OffPhases(rating, @switch, first, second));
    }

    private IReadOnlyList<StackOffPhase> OffPhases(SwitchRating rating, int @switch, int first, int second) => rating.Stack.Count == 1 ? [] :
    [
        .. Ratings.Stress.Modes.SelectMany(mode => mode.Analysis.Converter.Phases
            .Where(p => !mode.Mode.ClosedPhases[@switch].Contains(p.Number))
            .Select(p => StackOffPhase.Of(mode, p.Number, rating.Stack, first, second))),
    ];

    private IReadOnlyList<string> BodyNodes(SwitchDevice device, int first, int second)
    {
        Converter converter = Ratings.Stress.Analysis.Converter;
        return [.. converter.Nodes.Where((_, node) => Ratings.Stress.Modes.Count > 0 && Ratings.Stress.Modes.All(mode =>
            Enumerable.Range(0, converter.Phases.Count).All(phase => Serves(mode, node, first, phase) && Serves(mode, node, second, phase))))];

        bool Serves(ModeStress mode, int node, int terminal, int phase)
        {
            Interval<Fraction> difference = mode.Fixed.FixedDifference(node, terminal, phase) is { } known
                ? Intervals.Point(known)
                : mode.NodePotentials[node][phase + 1].PerVoltOfInput.Minus(mode.NodePotentials[terminal][phase + 1].PerVoltOfInput);
            return difference.IsDetermined
                && (device.Polarity == DevicePolarity.NType ? difference.Maximum!.Value <= Fraction.Zero : difference.Minimum!.Value >= Fraction.Zero);
        }
    }
}
