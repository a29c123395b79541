using ScNet.Analysis;
using ScNet.Design.Losses;
using ScNet.Design.Sizing;
using ScNet.Netlists;
using ScNet.Tests.Design.Losses;

namespace ScNet.Tests.Design.Sizing;

public sealed class SizingTaskTests
{
    // one capacitor, then four switches; at 5 V each holds or blocks 2.5 V: two of 2 V in series
    private readonly SizingTask _task = InventedSizing.Task(
        InventedSizing.Halver,
        [InventedSizing.Point(5, 2.3, 1e-3), InventedSizing.Point(5, null, 1e-3)],
        new AreaBudget(1e-8),
        InventedSizing.Process(capacitor: Sized.Capacitor with { EsrOhmSquareMetres = 2e-10 }),
        how: new() { Grid = new(0.5, 3e-12) });

    [Fact]
    public void A_converter_without_parasitic_capacitances_is_taken_as_it_is() => Assert.Same(InventedSizing.Halver.Converter, _task.Converter);

    [Fact]
    public void Parasitic_capacitances_are_left_to_the_formulas()
    {
        Converter plated = NetlistReader.Read("""
            name = "plated halver"
            input = "vin"
            output = "vout"
            [capacitors]
            fly = { between = ["p", "n"], farads = 1e-9, bottom_farads = 1e-11 }
            [switches]
            s1 = { between = ["vin", "p"], on = [1] }
            s2 = { between = ["n", "vout"], on = [1] }
            s3 = { between = ["p", "vout"], on = [2] }
            s4 = { between = ["n", "gnd"], on = [2] }
            """).GetConverter();
        Assert.NotEmpty(plated.ParasiticBranches);
        SizingTask task = InventedSizing.Task(ConverterAnalysis.Of(plated), [InventedSizing.Point(2, 0.9, 1e-3)], new AreaBudget(1e-8));
        Assert.Empty(task.Converter.ParasiticBranches);
        Assert.NotEmpty(task.Analysis.Converter.ParasiticBranches);
        Assert.Equal(plated.Switches.Select(s => s.Name), task.Converter.Switches.Select(s => s.Name));
    }

    [Fact]
    public void The_least_value_is_that_of_one_step_each()
    {
        // 3 µm² of 10 nF/mm² are 30 fF, two of them in series 15 fF; 0.5 µm of 1000 Ω µm are 2 kΩ, two of them 4 kΩ
        Assert.Equal(15e-15, _task.LeastValue(0, 0), 1e-28);
        Assert.Equal(1 / 4000.0, _task.LeastValue(1, 0), 1e-17);
        Assert.Equal(1 / 4000.0, _task.LeastValue(4, 0), 1e-17);
    }

    [Fact]
    public void Series_resistance_and_capacitance_have_a_product_that_no_area_moves()
    {
        // 2·10⁻¹⁰ Ω m² times 10⁻² F/m²
        Assert.Equal(2e-12, _task.EsrSeconds(0, 0), 1e-25);
        Assert.Equal(0, _task.EsrSeconds(1, 0));
        Assert.Equal(0, _task.EsrSeconds(4, 0));
    }

    [Fact]
    public void What_holds_the_output_is_the_drop_per_ampere()
    {
        // (5/2 − 2.3) V over 1 mA
        Assert.Equal(200, _task.NeededOhms(_task.Points[0]), 1e-9);
        Assert.Equal(double.PositiveInfinity, _task.NeededOhms(_task.Points[1]));
    }

    [Fact]
    public void Values_are_built_with_their_stacks()
    {
        SizedConverter sized = _task.Build([0, 0, 0, 0, 0], [1e-9, 0.1, 0.2, 0.25, 0.5]);
        Assert.Equal(1e-9, sized.Converter.Capacitors[0].Farads);
        Assert.Equal([10, 5, 4, 2], sized.Converter.Switches.Select(s => s.Ohms));
        Assert.All(sized.Switches, s => Assert.Equal(2, s.Count));
        Assert.Equal(2, sized.Capacitors[0].Count);

        // 2·10⁻¹² s over 1 nF
        Assert.Equal(2e-3, sized.Converter.Capacitors[0].EsrOhms, 1e-15);
    }
}
