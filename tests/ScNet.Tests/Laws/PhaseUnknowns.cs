namespace ScNet.Tests.Laws;

/// <summary>
/// The unknown charges (or currents) of one phase of the network as it is written down, nothing
/// contracted, and Kirchhoff's current law at every node but the reference.
/// </summary>
internal sealed class PhaseUnknowns
{
    private PhaseUnknowns(DenseSystem system, Converter converter)
    {
        Capacitors = system.Variables(converter.Capacitors.Count);
        Switches = system.Variables(converter.Switches.Count);
        Inductors = system.Variables(converter.Inductors.Count);
        Input = system.Variable();
        Output = system.Variable();
    }

    public int[] Capacitors { get; }

    public int[] Switches { get; }

    public int[] Inductors { get; }

    public int Input { get; }

    public int Output { get; }

    public static PhaseUnknowns Add(DenseSystem system, Converter converter, Mode mode, int phase)
    {
        PhaseUnknowns unknowns = new(system, converter);
        Dictionary<string, List<(int, double)>> leaving = converter.Nodes.ToDictionary(node => node, _ => new List<(int, double)>());
        for (int c = 0; c < converter.Capacitors.Count; c++)
        {
            leaving[converter.Capacitors[c].PositiveNode].Add((unknowns.Capacitors[c], 1));
            leaving[converter.Capacitors[c].BottomNode].Add((unknowns.Capacitors[c], -1));
        }

        for (int s = 0; s < converter.Switches.Count; s++)
        {
            leaving[converter.Switches[s].FirstNode].Add((unknowns.Switches[s], 1));
            leaving[converter.Switches[s].SecondNode].Add((unknowns.Switches[s], -1));
            if (!mode.ClosedPhases[s].Contains(phase))
            {
                system.Require(0, (unknowns.Switches[s], 1));
            }
        }

        for (int l = 0; l < converter.Inductors.Count; l++)
        {
            leaving[converter.Inductors[l].FirstNode].Add((unknowns.Inductors[l], 1));
            leaving[converter.Inductors[l].SecondNode].Add((unknowns.Inductors[l], -1));
        }

        leaving[converter.InputNode].Add((unknowns.Input, -1));
        leaving[converter.OutputNode].Add((unknowns.Output, 1));
        foreach (string node in converter.Nodes.Where(node => node != Converter.ReferenceNode))
        {
            system.Require(0, leaving[node]);
        }

        return unknowns;
    }
}
