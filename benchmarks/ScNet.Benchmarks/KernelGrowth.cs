using BenchmarkDotNet.Attributes;
using ScNet.Kernel;
using ScNet.Topologies;

namespace ScNet.Benchmarks;

/// <summary>
/// The kernel alone on networks of growing size: forests, loops, elimination, all voltages, and the charges of one
/// flow. What the analysis makes of it is measured elsewhere.
/// </summary>
[GrowthColumn]
public class KernelGrowth
{
    private SwitchedNetwork? _ladder;
    private SwitchedNetwork? _cells;
    private SwitchedNetwork? _phases;
    private SwitchedNetwork? _capacitors;

    /// <summary>Levels of the ladder, cells side by side, phases of the period, or capacitors side by side.</summary>
    [Params(50, 200, 1000)]
    public int Size { get; set; }

    /// <summary>Builds the networks.</summary>
    [GlobalSetup]
    public void Build()
    {
        _ladder = Ladder.StepDown(Size).Network;
        ConverterBuilder cells = Converter.Create("cells").Input("vin").Output("vout");
        ConverterBuilder capacitors = Converter.Create("capacitors").Input("vin").Output("vout").Capacitor("fly", "p", "n")
            .Switch("s1", "vin", "p", 1).Switch("s2", "n", "vout", 1).Switch("s3", "p", "vout", 2).Switch("s4", "n", "gnd", 2);
        for (int k = 0; k < Size; k++)
        {
            cells.Capacitor($"fly{k}", $"p{k}", $"n{k}")
                .Switch($"a{k}", "vin", $"p{k}", 1).Switch($"b{k}", $"n{k}", "vout", 1)
                .Switch($"c{k}", $"p{k}", "vout", 2).Switch($"d{k}", $"n{k}", "gnd", 2);
            capacitors.Capacitor($"c{k}", $"q{k}", "n").Switch($"t{k}", "p", $"q{k}", [1, 2]);
        }

        _cells = cells.Build().Network;
        _capacitors = capacitors.Build().Network;
        int[] odd = [.. Enumerable.Range(0, Size / 2).Select(k => (2 * k) + 1)], even = [.. odd.Select(k => k + 1)];
        _phases = Converter.Create("phases").Input("vin").Output("vout")
            .Duties([.. Enumerable.Repeat(new Fractions.Fraction(1, Size), Size)]).Capacitor("fly", "p", "n")
            .Switch("s1", "vin", "p", PhaseSet.Of(odd)).Switch("s2", "n", "vout", PhaseSet.Of(odd)).Switch("s3", "p", "vout", PhaseSet.Of(even)).Switch("s4", "n", "gnd", PhaseSet.Of(even))
            .Build().Network;
    }

    /// <summary>A ladder.</summary>
    [Benchmark]
    public int LadderLevels() => Solve(_ladder!);

    /// <summary>Half converters side by side between input, output and reference.</summary>
    [Benchmark]
    public int ParallelCells() => Solve(_cells!);

    /// <summary>One capacitor in very many phases.</summary>
    [Benchmark]
    public int Phases() => Solve(_phases!);

    /// <summary>Capacitors side by side, each with a switch of its own.</summary>
    [Benchmark]
    public int ParallelCapacitors() => Solve(_capacitors!);

    private static int Solve(SwitchedNetwork network)
    {
        PhaseForest[] forests = [.. Enumerable.Range(0, network.PhaseCount).Select(phase => PhaseForest.Of(network, network.ClosedIn(0, phase)))];
        LoopSet loops = LoopSet.Of(network, forests);
        Elimination<long> elimination = Elimination<long>.Run(LoopEquations.Of<long>(network, loops), network.CapacitorCount, 1);
        var voltages = new Rational<long>[network.BranchCount];
        voltages[network.InputBranch] = Rational<long>.One;
        elimination.SubstituteBack(voltages);
        var charges = new Rational<long>[loops.EquationCount];
        return elimination.TryCombine(network.OutputBranch, charges) ? loops.Count : 0;
    }
}
