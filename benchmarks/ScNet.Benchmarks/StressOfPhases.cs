using BenchmarkDotNet.Attributes;
using ScNet.Analysis;
using ScNet.Design;
using ScNet.Stress;

namespace ScNet.Benchmarks;

/// <summary>Stress and bottom plates of a halver that switches many times a period, with a rest in each third phase; the last column shows how the time grows with the phases.</summary>
[GrowthColumn]
public class StressOfPhases
{
    private ModeAnalysis? _analysis;

    /// <summary>The number of phases, a multiple of three.</summary>
    [Params(48, 198, 999)]
    public int Phases { get; set; }

    /// <summary>Builds and analyses the halver.</summary>
    [GlobalSetup]
    public void Build()
    {
        PhaseSet up = PhaseSet.Of([.. Enumerable.Range(1, Phases).Where(j => j % 3 == 1)]);
        PhaseSet down = PhaseSet.Of([.. Enumerable.Range(1, Phases).Where(j => j % 3 == 2)]);
        Converter converter = Converter.Create("Half, often").Input("vin").Output("vout").Phases(Phases)
            .Capacitor("fly", "p", "n").Switch("s1", "vin", "p", up).Switch("s2", "n", "vout", up)
            .Switch("s3", "p", "vout", down).Switch("s4", "n", "gnd", down).Build();
        _analysis = ModeAnalysis.Of(converter);
    }

    /// <summary>The stress of the mode, with the floating phases bounded.</summary>
    [Benchmark]
    public ModeStress Stress() => ModeStress.Of(_analysis!, new Interval<double>(1, 1));

    /// <summary>The swings of the bottom plates.</summary>
    [Benchmark]
    public BottomPlateSwing BottomPlates() => BottomPlateSwing.Of(_analysis!);
}
