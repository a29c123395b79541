using ScNet.Analysis;
using ScNet.SteadyState;
using ScNet.Topologies;

namespace ScNet.Tests.SteadyState;

/// <summary>Networks too large for dense parts are refused before any is begun; what takes seconds is not.</summary>
public sealed class SteadyStateSizeTests
{
    public static TheoryData<int, int, string> Large => new()
    {
        { 1000, 2, "impedance" }, { 1000, 2, "operate" }, { 1000, 2, "sensitivity" }, { 1000, 2, "slopes" }, { 1, 1000, "impedance" },
    };

    [Theory]
    [MemberData(nameof(Large))]
    public void What_is_too_large_is_refused_before_it_takes_memory(int cells, int phases, string what)
    {
        ModeAnalysis analysis = Cells(cells, phases, LoadKind.Current);
        long before = GC.GetAllocatedBytesForCurrentThread();
        ScNetException refusal = Assert.Throws<ScNetException>(() => { Do(analysis, what); });
        long allocated = GC.GetAllocatedBytesForCurrentThread() - before;
        Diagnostic finding = Assert.Single(refusal.Diagnostics);
        Assert.Equal(DiagnosticCodes.SteadyStateTooLarge, finding.Code);
        Assert.Equal(DiagnosticSeverity.Error, finding.Severity);
        Assert.Contains("4E+10", finding.Message, StringComparison.Ordinal);
        Assert.Contains("divide its impedance by their number", finding.Message, StringComparison.Ordinal);

        // one state of every node alone would take more
        Assert.InRange(allocated, 0, 20_000_000);
    }

    [Theory]
    [InlineData(200, 2, LoadKind.Stiff, "impedance")]
    [InlineData(200, 2, LoadKind.Stiff, "operate")]
    [InlineData(1, 100, LoadKind.Stiff, "impedance")]
    [InlineData(1, 100, LoadKind.Stiff, "sensitivity")]
    [InlineData(50, 2, LoadKind.Current, "impedance")]
    public void What_takes_seconds_is_not_refused(int cells, int phases, LoadKind load, string what) =>
        Assert.True(Do(Cells(cells, phases, load), what) > 0);

    // cells on a stiff output are independent of one another
    [Theory]
    [InlineData("impedance")]
    [InlineData("operate")]
    [InlineData("sensitivity")]
    public void Cells_side_by_side_on_a_stiff_output_take_memory_in_proportion_to_their_number(string what)
    {
        Do(Cells(10, 4, LoadKind.Stiff), what);
        ModeAnalysis few = Cells(100, 4, LoadKind.Stiff), many = Cells(400, 4, LoadKind.Stiff);
        long small = Allocations.Of(() => Do(few, what)), large = Allocations.Of(() => Do(many, what));
        Assert.InRange(large, small, 5 * small);
    }

    [Fact]
    public void Thousands_of_cells_on_a_stiff_output_have_their_share_of_the_impedance_of_one()
    {
        double one = Do(Cells(1, 2, LoadKind.Stiff), "impedance");
        Assert.Equal(one / 3000, Do(Cells(3000, 2, LoadKind.Stiff), "impedance"), 1e-12 * one / 3000);
    }

    // far above what dense rows may have, and a second for chains
    [Fact]
    public void The_impedance_of_a_ladder_beyond_the_dense_bound_is_found_by_its_chains()
    {
        Converter ladder = Ladder.StepDown(2000);
        ModeAnalysis analysis = ModeAnalysis.Of(ladder, ladder.Modes[0]);
        double ohms = OutputImpedance.Of(analysis).Ohms(1e9);
        Assert.Equal(analysis.FastSwitchingLimit.Ohms, ohms, 1e-6 * ohms);
    }

    private static double Do(ModeAnalysis analysis, string what) => what switch
    {
        "impedance" => OutputImpedance.Of(analysis).Ohms(1),
        "operate" => PeriodicSteadyState.Of(analysis, new OperatingPoint(10, 1, 1)).OutputImpedanceOhms,
        "slopes" => SteadyStateModel.Of(analysis).TwoPortSensitivityAt(1).ByFrequency.Ohms,
        _ => ImpedanceSensitivity.Of(analysis, 1).Ohms,
    };

    // Cells that halve the voltage, in odd phases on top of the output and in even ones across it.
    private static ModeAnalysis Cells(int count, int phases, LoadKind load)
    {
        PhaseSet odd = [.. Enumerable.Range(1, phases).Where(j => j % 2 == 1)], even = [.. Enumerable.Range(1, phases).Where(j => j % 2 == 0)];
        ConverterBuilder builder = Converter.Create("Cells").Input("vin").Output("vout", load).Phases(phases);
        for (int k = 0; k < count; k++)
        {
            builder.Capacitor($"fly{k}", $"p{k}", $"n{k}")
                .Switch($"a{k}", "vin", $"p{k}", odd).Switch($"b{k}", $"n{k}", "vout", odd)
                .Switch($"c{k}", $"p{k}", "vout", even).Switch($"d{k}", $"n{k}", "gnd", even);
        }

        Converter converter = (load == LoadKind.Current ? builder.Capacitor("out", "vout", "gnd") : builder).Build();
        return ModeAnalysis.Of(converter, converter.Modes[0]);
    }
}
