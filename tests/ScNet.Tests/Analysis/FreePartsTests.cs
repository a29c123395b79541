using ScNet.Analysis;

namespace ScNet.Tests.Analysis;

/// <summary>
/// Converters made of equal parts: by symmetry each part carries its share, so the figures of one part give
/// those of the whole. The closed forms are derived here; nothing is compared with another run of the same size.
/// </summary>
public sealed class FreePartsTests
{
    private const double Tolerance = 1e-12;

    [Theory]
    [InlineData(2, 2)]
    [InlineData(40, 2)]
    [InlineData(5, 6)]
    public void Equal_cells_share_alike(int cells, int phases)
    {
        ModeAnalysis one = Analyse(Cells(1, phases)), all = Analyse(Cells(cells, phases));
        Near(one.SlowSwitchingLimit.OhmsAtOneHertz / cells, all.SlowSwitchingLimit.OhmsAtOneHertz);
        Near(one.FastSwitchingLimit.Ohms / cells, all.FastSwitchingLimit.Ohms);
        for (int cell = 0; cell < cells; cell++)
        {
            for (int j = 1; j <= phases; j++)
            {
                Near(one.ChargeFlow.Capacitors[0][j].ToDouble() / cells, all.ChargeFlow.Capacitors[cell][j].ToDouble());
                Near(one.ChargeFlow.Switches[0][j].ToDouble() / cells, all.ChargeFlow.Switches[4 * cell][j].ToDouble());
            }
        }
    }

    [Theory]
    [InlineData(3)]
    [InlineData(50)]
    public void Cells_of_different_size_share_by_their_own_limits(int cells)
    {
        // slow: by capacitance; fast: by conductance. Cell k has k + 1 times the capacitance and the resistance of the first.
        double sum = cells * (cells + 1) / 2.0, harmonic = Enumerable.Range(1, cells).Sum(k => 1.0 / k);
        ModeAnalysis all = Analyse(Cells(cells, 2, k => k + 1));
        for (int k = 0; k < cells; k++)
        {
            Near(0.5 * (k + 1) / sum, all.ChargeFlow.Capacitors[k][1].ToDouble());
            Near(0.5 / (k + 1) / harmonic, all.ChargeFlow.Switches[4 * k][1].ToDouble());
        }

        Near(0.25 / sum, all.SlowSwitchingLimit.OhmsAtOneHertz);
        Near(2 / harmonic, all.FastSwitchingLimit.Ohms);
    }

    [Theory]
    [InlineData(2)]
    [InlineData(30)]
    [InlineData(300)]
    public void A_period_that_repeats_itself_shares_alike(int times)
    {
        ModeAnalysis once = Analyse(Cells(1, 2)), often = Analyse(Cells(1, 2 * times));
        Near(once.SlowSwitchingLimit.OhmsAtOneHertz / times, often.SlowSwitchingLimit.OhmsAtOneHertz);
        Near(once.FastSwitchingLimit.Ohms, often.FastSwitchingLimit.Ohms);
        for (int j = 1; j <= 2 * times; j++)
        {
            Near(once.ChargeFlow.Capacitors[0][((j - 1) % 2) + 1].ToDouble() / times, often.ChargeFlow.Capacitors[0][j].ToDouble());
        }
    }

    [Theory]
    [InlineData(2)]
    [InlineData(7)]
    [InlineData(200)]
    public void Capacitors_side_by_side_share_by_capacitance(int count)
    {
        // count capacitors of 1, 2, ... farads between the same nodes in place of one of their sum
        ConverterBuilder builder = Frame("Stack").Phases(2);
        for (int k = 1; k <= count; k++)
        {
            builder.Capacitor($"side{k}", "p0", "n0", farads: k);
        }

        Switches(builder, 0, 2, ohms: 1);
        ModeAnalysis analysis = Analyse(builder.Build());
        double sum = count * (count + 1) / 2.0;
        Near(0.25 / sum, analysis.SlowSwitchingLimit.OhmsAtOneHertz);
        Near(2, analysis.FastSwitchingLimit.Ohms);
        for (int k = 1; k <= count; k++)
        {
            Near(0.5 * k / sum, analysis.ChargeFlow.Capacitors[k - 1][1].ToDouble());
        }
    }

    [Theory]
    [InlineData(3)]
    [InlineData(12)]
    public void A_full_mesh_of_switches_has_two_nths_of_the_resistance_of_one(int nodes)
    {
        // by symmetry: a current between two nodes leaves all the others at one potential
        ModeAnalysis analysis = Analyse(Mesh(nodes));
        Near(2 + (1.0 / nodes), analysis.FastSwitchingLimit.Ohms);
        Near(0.25, analysis.SlowSwitchingLimit.OhmsAtOneHertz);
    }

    [Fact]
    public void A_mesh_too_dense_to_be_solved_is_refused_with_the_reason()
    {
        Converter converter = Mesh(100);
        ModeOutcome outcome = ModeAnalysis.Try(converter, converter.Modes[0]);
        Assert.False(outcome.HasResult);
        Diagnostic error = Assert.Single(outcome.Diagnostics);
        Assert.Equal(DiagnosticCodes.FlowTooDense, error.Code);
        Assert.Equal(DiagnosticSeverity.Error, error.Severity);
        Assert.Contains("4852 ways", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_mesh_too_dense_with_other_values_is_refused_with_the_same_reason()
    {
        Converter converter = Mesh(100);
        TopologySolution topology = TopologySolver.Solve(converter, converter.Modes[0]);

        ScNetException refused = Assert.Throws<ScNetException>(() => ModeSolver.Join(converter, converter.Modes[0], topology));
        Assert.Equal(DiagnosticCodes.FlowTooDense, Assert.Single(refused.Diagnostics).Code);

        List<Diagnostic> diagnostics = [new(DiagnosticSeverity.Warning, DiagnosticCodes.LoadInterrupted, "Another.", []), refused.Diagnostics[0]];
        Assert.Null(OutputMatrices.Settle(converter, topology, diagnostics));
        Assert.Equal([DiagnosticCodes.LoadInterrupted, DiagnosticCodes.FlowTooDense], diagnostics.Select(d => d.Code));
    }

    [Theory]
    [InlineData("cells")]
    [InlineData("phases")]
    [InlineData("capacitors")]
    public void What_an_analysis_allocates_grows_in_proportion(string what)
    {
        Converter Of(int size) => what switch
        {
            "cells" => Cells(size, 2),
            "phases" => Cells(1, size),
            _ => SideBySide(size),
        };
        Converter small = Of(100), large = Of(400);
        Analyse(small);
        long before = GC.GetAllocatedBytesForCurrentThread();
        Analyse(small);
        long first = GC.GetAllocatedBytesForCurrentThread() - before;
        before = GC.GetAllocatedBytesForCurrentThread();
        Analyse(large);
        long second = GC.GetAllocatedBytesForCurrentThread() - before;
        Assert.InRange((double)second / first, 1, 8);
    }

    // One halving cell whose first switch is followed by a switch between every two of some nodes, closed with it.
    private static Converter Mesh(int nodes)
    {
        string[] names = ["x0", "p0", .. Enumerable.Range(2, nodes - 2).Select(k => $"x{k}")];
        ConverterBuilder builder = Frame("Mesh").Phases(2)
            .Capacitor("fly", "p0", "n0")
            .Switch("a", "vin", "x0", on: [1]).Switch("b", "n0", "vout", on: [1])
            .Switch("c", "p0", "vout", on: [2]).Switch("d", "n0", "gnd", on: [2]);
        for (int k = 0; k < nodes; k++)
        {
            for (int other = k + 1; other < nodes; other++)
            {
                builder.Switch($"m{k}-{other}", names[k], names[other], on: [1]);
            }
        }

        return builder.Build();
    }

    private static Converter SideBySide(int count)
    {
        ConverterBuilder builder = Frame("Side by side").Phases(2);
        for (int k = 0; k < count; k++)
        {
            builder.Capacitor($"side{k}", $"q{k}", "n0").Switch($"t{k}", "p0", $"q{k}", on: [1, 2]);
        }

        Switches(builder, 0, 2, ohms: 1);
        return builder.Build();
    }

    // Cells that halve the voltage, in odd phases on top of the output and in even ones across it.
    private static Converter Cells(int count, int phases, Func<int, double>? size = null)
    {
        ConverterBuilder builder = Frame("Cells").Phases(phases);
        for (int k = 0; k < count; k++)
        {
            double own = size?.Invoke(k) ?? 1;
            builder.Capacitor($"fly{k}", $"p{k}", $"n{k}", farads: own);
            Switches(builder, k, phases, own);
        }

        return builder.Build();
    }

    private static ConverterBuilder Frame(string name) => Converter.Create(name).Input("vin").Output("vout");

    private static void Switches(ConverterBuilder builder, int k, int phases, double ohms)
    {
        PhaseSet odd = [.. Enumerable.Range(1, phases).Where(j => j % 2 == 1)], even = [.. Enumerable.Range(1, phases).Where(j => j % 2 == 0)];
        builder
            .Switch($"a{k}", "vin", $"p{k}", odd, ohms).Switch($"b{k}", $"n{k}", "vout", odd, ohms)
            .Switch($"c{k}", $"p{k}", "vout", even, ohms).Switch($"d{k}", $"n{k}", "gnd", even, ohms);
    }

    private static ModeAnalysis Analyse(Converter converter) => ModeAnalysis.Of(converter, converter.Modes[0]);

    private static void Near(double expected, double actual) =>
        Assert.True(Math.Abs(expected - actual) <= Tolerance * Math.Abs(expected), $"expected {expected:R}, but got {actual:R}");
}
