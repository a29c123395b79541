using ScNet.Analysis;

namespace ScNet.Tests.Laws;

/// <summary>Kirchhoff's current law for sets of nodes.</summary>
internal static class NodeBalance
{
    /// <summary>
    /// Requires that no set gains charge in any phase from the elements that are asked for, inductors and ports. Ports on
    /// different sets are linked outside; the reference takes whatever the others do not.
    /// </summary>
    public static void AssertNoSetGainsCharge(ModeAnalysis analysis, Func<int, NodeSets> setsOf, bool capacitors, bool switches)
    {
        Converter converter = analysis.Converter;
        ChargeFlow flow = analysis.ChargeFlow;
        foreach (Phase phase in converter.Phases)
        {
            int number = phase.Number;
            NodeSets sets = setsOf(number);
            Dictionary<int, List<Quantity>> leaving = sets.All.ToDictionary(set => set, _ => new List<Quantity>());
            if (capacitors)
            {
                Add(converter.Capacitors.Select((c, i) => (c.PositiveNode, c.BottomNode, flow.Capacitors[i][number])));
            }

            if (switches)
            {
                Add(converter.Switches.Select((s, i) => (s.FirstNode, s.SecondNode, flow.Switches[i][number])));
            }

            Add(converter.Inductors.Select((l, i) => (l.FirstNode, l.SecondNode, flow.Inductors[i][number])));

            // The ports' numbers belong to the fast flow; the slow one shares only their fractions.
            bool portsKnown = switches || flow.Input.Concat(flow.Output).All(q => q.IsExact);
            bool outputKnown = portsKnown || converter.Load == LoadKind.Current;
            leaving[sets[converter.InputNode]].Add(-flow.Input[number]);
            leaving[sets[converter.OutputNode]].Add(flow.Output[number]);
            foreach (int set in sets.All.Where(set => set != sets[Converter.ReferenceNode]
                && (portsKnown || set != sets[converter.InputNode])
                && (outputKnown || set != sets[converter.OutputNode])))
            {
                LawSample.AssertSumIsZero([0, .. leaving[set]], $"phase {number}");
            }

            void Add(IEnumerable<(string First, string Second, Quantity Charge)> branches)
            {
                foreach ((string first, string second, Quantity charge) in branches)
                {
                    leaving[sets[first]].Add(charge);
                    leaving[sets[second]].Add(-charge);
                }
            }
        }
    }
}
