using ScNet.Kernel;

namespace ScNet.Analysis;

/// <summary>Says in names what a loop demands: "phase 1 through s1, s2: fly = vin - vout".</summary>
internal sealed class LoopDescriptions(Converter converter, PhaseForest[] forests, LoopSet loops)
{
    private const int MostLoops = 8;
    private const int MaximumTerms = 6;

    private readonly SwitchedNetwork _network = converter.Network;
    private readonly FlowTracer<long> _tracer = new(converter.Network, forests);

    /// <summary>The number of a phase, and its name where it has one.</summary>
    public static string Label(Converter converter, int phase) => converter.Phases[phase].Name == $"{phase + 1}"
        ? $"{phase + 1}"
        : $"{phase + 1} ({converter.Phases[phase].Name})";

    /// <summary>"capacitor 'a'" or "capacitors 'a', 'b'"; of very many, the first few and how many more.</summary>
    public static string List(IReadOnlyCollection<string> capacitors) =>
        (capacitors.Count == 1 ? "capacitor " : "capacitors ") + Quoted.List(capacitors);

    /// <summary>What several loops demand, one after the other.</summary>
    public string Demands(IReadOnlyCollection<int> members)
    {
        string demands = string.Join("; ", members.Take(MostLoops).Select(Demand));
        return members.Count <= MostLoops ? demands : $"{demands}; and {members.Count - MostLoops} more";
    }

    /// <summary>The names of the capacitors, of the inductors and then of the switches of the loops that are told, each in the converter's order.</summary>
    public string[] Elements(IReadOnlyCollection<int> members)
    {
        int[] told = [.. members.Take(MostLoops)];
        IEnumerable<int> branches = told.SelectMany(l => loops.Branches(l).ToArray())
            .Where(b => b < _network.CapacitorCount || b >= _network.FirstInductorBranch);
        return
        [
            .. branches.Distinct().Order().Select(converter.BranchName),
            .. told.SelectMany(SwitchesOf).Distinct().Order().Select(s => converter.Switches[s].Name),
        ];
    }

    /// <summary>The names of the switches through which a loop closes, in the converter's order.</summary>
    public string[] Switches(int loop) => [.. SwitchesOf(loop).Select(s => converter.Switches[s].Name)];

    private IEnumerable<int> SwitchesOf(int loop)
    {
        FlowDirection flow = _tracer.Trace(loops, [(loop, Rational<long>.One)]);
        return flow.Switches.Indices.ToArray().Select(e => e / forests.Length);
    }

    private string Demand(int loop)
    {
        string[] switches = Switches(loop);
        string through = switches.Length > 0 ? $" through {string.Join(", ", switches)}" : string.Empty;
        return $"phase {Label(converter, loops.Phase(loop))}{through}: {Equation(loop)}";
    }

    // Kirchhoff's voltage law of the loop, solved for its first capacitor, or for the output where it has none.
    private string Equation(int loop)
    {
        (int Branch, int Sign)[] terms = [.. loops.Branches(loop).ToArray().Zip(loops.Signs(loop).ToArray()).OrderBy(t => t.First)];
        (int Branch, int Sign) subject = terms[0];
        (int Branch, int Sign)[] others = [.. terms[1..].Select(t => (t.Branch, Sign: t.Sign == subject.Sign ? -1 : 1)).OrderByDescending(t => t.Sign).ThenByDescending(t => t.Branch)];
        string right = others.Length == 0 ? "0" : string.Concat(others.Take(MaximumTerms).Select((t, k) =>
            (t.Sign > 0 ? k == 0 ? string.Empty : " + " : k == 0 ? "-" : " - ") + Name(t.Branch)));
        string rest = others.Length > MaximumTerms ? $" and {others.Length - MaximumTerms} more terms" : string.Empty;
        return $"{Name(subject.Branch)} = {right}{rest}";
    }

    private string Name(int branch) => converter.BranchName(branch);
}
