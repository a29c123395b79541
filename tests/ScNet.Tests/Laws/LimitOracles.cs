using MathNet.Numerics.LinearAlgebra;

namespace ScNet.Tests.Laws;

/// <summary>The charges of the capacitors and switches, per phase, and the resistance that a limit gives.</summary>
internal sealed record LimitSolution(double Ohms, double[][] Capacitors, double[][] Switches, double[][] Inductors);

/// <summary>
/// The two limits by their literal definition: one unit of charge per period of one second is drawn from
/// the output of the network with its input at zero volts, and the output voltage is the negative
/// resistance. Nothing is contracted and no formula for a limit is used.
/// </summary>
internal static class LimitOracles
{
    /// <summary>
    /// Each phase settles: no voltage across closed switches, and each capacitor has moved by its charge
    /// over its capacitance since the end of the phase before. The resistance is that of a stiff output.
    /// </summary>
    /// <param name="converter">The converter.</param>
    /// <param name="mode">The mode.</param>
    /// <param name="inductors">The charges that its inductors carry.</param>
    public static LimitSolution? Slow(Converter converter, Mode mode, PhaseTable inductors)
    {
        DenseSystem system = new();
        int output = system.Variable();
        PhaseUnknowns[] charges = Charges(system, converter, mode);
        int[][] potentials = Potentials(system, converter, output);
        int count = converter.Phases.Count;
        for (int j = 0; j < count; j++)
        {
            int before = (j + count - 1) % count;
            for (int c = 0; c < converter.Capacitors.Count; c++)
            {
                (int positive, int bottom) = Ends(converter, converter.Capacitors[c].PositiveNode, converter.Capacitors[c].BottomNode);
                system.Require(
                    0,
                    (charges[j].Capacitors[c], 1 / converter.Capacitors[c].Farads),
                    (potentials[j][positive], -1), (potentials[j][bottom], 1),
                    (potentials[before][positive], 1), (potentials[before][bottom], -1));
            }

            ForEachClosed(converter, mode, j, (_, first, second) =>
                system.Require(0, (potentials[j][first], 1), (potentials[j][second], -1)));
        }

        for (int j = 0; j < count; j++)
        {
            for (int l = 0; l < inductors.Count; l++)
            {
                system.Require(inductors[l][j + 1].ToDouble(), (charges[j].Inductors[l], 1));
            }

            if (converter.Load == LoadKind.Current)
            {
                system.Require(converter.Phases[j].Duty.ToDouble(), (charges[j].Output, 1));
            }
        }

        system.Require(1, charges.Select(c => (c.Output, 1.0)));
        return system.Solve() is { } x ? Read(x, -x[output], charges, _ => 1) : null;
    }

    /// <summary>
    /// What is left where held currents flow at a steady rate: in each phase charge moves in an impulse at the start, without
    /// the held currents, and then at constant rates, with them. No voltage across closed switches, neither after the impulse nor
    /// at the end; what an inductor sees averages to nothing.
    /// </summary>
    /// <param name="converter">The converter.</param>
    /// <param name="mode">The mode.</param>
    /// <param name="capacitors">The charges that its capacitors carry, to see whether these are a solution; null where any do.</param>
    public static LimitSolution? Sharing(Converter converter, Mode mode, PhaseTable? capacitors = null)
    {
        DenseSystem system = new();
        int output = system.Variable(), count = converter.Phases.Count;
        PhaseUnknowns[] impulses = Charges(system, converter, mode), steady = Charges(system, converter, mode);
        int[][] early = Potentials(system, converter, output), late = Potentials(system, converter, output);
        double[] duties = [.. converter.Phases.Select(p => p.Duty.ToDouble())];
        for (int j = 0; j < count; j++)
        {
            int before = (j + count - 1) % count;
            for (int c = 0; c < converter.Capacitors.Count; c++)
            {
                (int positive, int bottom) = Ends(converter, converter.Capacitors[c].PositiveNode, converter.Capacitors[c].BottomNode);
                Moved(impulses[j].Capacitors[c], early[j], late[before]);
                Moved(steady[j].Capacitors[c], late[j], early[j]);
                if (capacitors is not null)
                {
                    system.Require(capacitors[c][j + 1].ToDouble(), (impulses[j].Capacitors[c], 1), (steady[j].Capacitors[c], 1));
                }

                void Moved(int charge, int[] now, int[] then) => system.Require(
                    0, (charge, 1 / converter.Capacitors[c].Farads), (now[positive], -1), (now[bottom], 1), (then[positive], 1), (then[bottom], -1));
            }

            ForEachClosed(converter, mode, j, (_, first, second) =>
            {
                system.Require(0, (early[j][first], 1), (early[j][second], -1));
                system.Require(0, (late[j][first], 1), (late[j][second], -1));
            });
            for (int l = 0; l < converter.Inductors.Count; l++)
            {
                system.Require(0, (impulses[j].Inductors[l], 1));
                system.Require(0, (steady[j].Inductors[l], duties[0]), (steady[0].Inductors[l], -duties[j]));
            }

            if (converter.Load == LoadKind.Current)
            {
                system.Require(0, (impulses[j].Output, 1));
                system.Require(duties[j], (steady[j].Output, 1));
            }
        }

        for (int l = 0; l < converter.Inductors.Count; l++)
        {
            (int first, int second) = Ends(converter, converter.Inductors[l].FirstNode, converter.Inductors[l].SecondNode);
            system.Require(0, early.Concat(late).SelectMany((p, j) => new[] { (p[first], duties[j % count]), (p[second], -duties[j % count]) }));
        }

        if (converter.Load == LoadKind.Current)
        {
            int node = IndexOf(converter, converter.OutputNode);
            system.Require(0, [(output, 2), .. early.Concat(late).Select((p, j) => (p[node], -duties[j % count]))]);
        }

        system.Require(1, impulses.Concat(steady).Select(c => (c.Output, 1.0)));
        return system.Solve() is { } x ? Read(x, -x[output], impulses, _ => 1) : null;
    }

    /// <summary>
    /// Capacitors are constant voltages whose current averages to nothing, inductors constant currents whose voltage
    /// averages to nothing beside that of the winding, and each phase is a network of resistances. A current load draws one
    /// ampere all the time.
    /// </summary>
    public static LimitSolution? Fast(Converter converter, Mode mode)
    {
        DenseSystem system = new();
        int output = system.Variable();
        int[] voltages = system.Variables(converter.Capacitors.Count);
        PhaseUnknowns[] currents = Charges(system, converter, mode);
        int[][] potentials = Potentials(system, converter, output);
        double[] duties = [.. converter.Phases.Select(p => p.Duty.ToDouble())];
        for (int j = 0; j < duties.Length; j++)
        {
            for (int c = 0; c < converter.Capacitors.Count; c++)
            {
                (int positive, int bottom) = Ends(converter, converter.Capacitors[c].PositiveNode, converter.Capacitors[c].BottomNode);
                system.Require(
                    0,
                    (potentials[j][positive], 1), (potentials[j][bottom], -1),
                    (voltages[c], -1), (currents[j].Capacitors[c], -converter.Capacitors[c].EsrOhms));
            }

            ForEachClosed(converter, mode, j, (s, first, second) => system.Require(
                0, (potentials[j][first], 1), (potentials[j][second], -1), (currents[j].Switches[s], -converter.Switches[s].Ohms)));
            if (converter.Load == LoadKind.Current)
            {
                system.Require(1, (currents[j].Output, 1));
            }
        }

        for (int c = 0; c < voltages.Length; c++)
        {
            system.Require(0, currents.Select((x, j) => (x.Capacitors[c], duties[j])));
        }

        for (int l = 0; l < converter.Inductors.Count; l++)
        {
            Inductor inductor = converter.Inductors[l];
            (int first, int second) = Ends(converter, inductor.FirstNode, inductor.SecondNode);
            for (int j = 1; j < duties.Length; j++)
            {
                system.Require(0, (currents[j].Inductors[l], 1), (currents[0].Inductors[l], -1));
            }

            system.Require(
                0,
                [(currents[0].Inductors[l], -inductor.Ohms), .. potentials.SelectMany((p, j) => new[] { (p[first], duties[j]), (p[second], -duties[j]) })]);
        }

        system.Require(1, currents.Select((x, j) => (x.Output, duties[j])));
        if (converter.Load == LoadKind.Current)
        {
            int node = IndexOf(converter, converter.OutputNode);
            system.Require(0, [(output, 1), .. potentials.Select((p, j) => (p[node], -duties[j]))]);
        }

        return system.Solve() is { } x ? Read(x, -x[output], currents, j => duties[j]) : null;
    }

    private static PhaseUnknowns[] Charges(DenseSystem system, Converter converter, Mode mode) =>
        [.. converter.Phases.Select(p => PhaseUnknowns.Add(system, converter, mode, p.Number))];

    // Reference and input at zero volts; a stiff output at one voltage in all phases.
    private static int[][] Potentials(DenseSystem system, Converter converter, int output)
    {
        int[][] potentials = [.. converter.Phases.Select(_ => system.Variables(converter.Nodes.Count))];
        foreach (int[] phase in potentials)
        {
            system.Require(0, (phase[IndexOf(converter, Converter.ReferenceNode)], 1));
            system.Require(0, (phase[IndexOf(converter, converter.InputNode)], 1));
            if (converter.Load == LoadKind.Stiff)
            {
                system.Require(0, (phase[IndexOf(converter, converter.OutputNode)], 1), (output, -1));
            }
        }

        return potentials;
    }

    private static void ForEachClosed(Converter converter, Mode mode, int phase, Action<int, int, int> action)
    {
        for (int s = 0; s < converter.Switches.Count; s++)
        {
            if (mode.ClosedPhases[s].Contains(phase + 1))
            {
                (int first, int second) = Ends(converter, converter.Switches[s].FirstNode, converter.Switches[s].SecondNode);
                action(s, first, second);
            }
        }
    }

    private static LimitSolution Read(Vector<double> x, double ohms, PhaseUnknowns[] phases, Func<int, double> seconds) => new(
        ohms,
        [.. phases[0].Capacitors.Select((_, c) => phases.Select((p, j) => x[p.Capacitors[c]] * seconds(j)).ToArray())],
        [.. phases[0].Switches.Select((_, s) => phases.Select((p, j) => x[p.Switches[s]] * seconds(j)).ToArray())],
        [.. phases[0].Inductors.Select((_, l) => phases.Select((p, j) => x[p.Inductors[l]] * seconds(j)).ToArray())]);

    private static (int First, int Second) Ends(Converter converter, string first, string second) =>
        (IndexOf(converter, first), IndexOf(converter, second));

    private static int IndexOf(Converter converter, string node) => converter.Nodes.TakeWhile(n => n != node).Count();
}
