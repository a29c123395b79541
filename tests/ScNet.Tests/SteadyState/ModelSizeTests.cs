using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>
/// Cells that halve the voltage, all on one load current: n cells have 2 n resistances in a phase and n free directions, whose flows
/// take 20 · 4 n · n² multiplications. 4e10 are allowed, so 1500 cells are too many.
/// </summary>
public sealed class ModelSizeTests
{
    [Fact]
    public void Flows_that_are_too_large_are_refused_as_the_model_is_made()
    {
        ModeAnalysis analysis = Cells(1500);
        ScNetException refusal = Assert.Throws<ScNetException>(() => SteadyStateModel.Of(analysis));
        Assert.Equal(DiagnosticCodes.SteadyStateTooLarge, Assert.Single(refusal.Diagnostics).Code);
    }

    private static ModeAnalysis Cells(int count)
    {
        ConverterBuilder builder = Converter.Create("cells").Input("vin").Output("vout", LoadKind.Current).Capacitor("out", "vout", "gnd");
        for (int k = 0; k < count; k++)
        {
            builder.Capacitor($"fly{k}", $"p{k}", $"n{k}").Switch($"a{k}", "vin", $"p{k}", on: 1).Switch($"b{k}", $"n{k}", "vout", on: 1)
                .Switch($"c{k}", $"p{k}", "vout", on: 2).Switch($"d{k}", $"n{k}", "gnd", on: 2);
        }

        Converter converter = builder.Build();
        return ModeAnalysis.Of(converter, converter.Modes[0]);
    }
}
