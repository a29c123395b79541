using ScNet.Analysis;
using ScNet.Design;
using ScNet.Topologies;

namespace ScNet.Tests.Design;

public sealed class BottomPlateSwingTests
{
    // series-parallel by three: n1 is at 2/3 in series and at 0 in parallel, n2 at 1/3 and at 0
    [Fact]
    public void The_upper_capacitor_of_a_series_string_swings_the_most()
    {
        BottomPlateSwing swing = Of(SeriesParallel.StepDown(3));
        Assert.Equal([Quantity.Exact(1, 3), Quantity.Exact(2, 3)], swing.PerVoltOfInput.Order(Comparer<Quantity>.Create((a, b) => a.ToDouble().CompareTo(b.ToDouble()))));
        Assert.Equal(Quantity.Exact(2, 3), swing.Maximum);
        Assert.Single(swing.MaximumCapacitors);
        // two equal capacitors: (1/9 + 4/9) / 2
        Assert.Equal(5.0 / 18, swing.LossWeight, 1e-15);
        Assert.Empty(swing.Undetermined);
    }

    // every bottom plate of a Dickson network swings by one stage: common practice, no source
    [Fact]
    public void Every_bottom_plate_of_a_Dickson_network_swings_by_one_stage()
    {
        BottomPlateSwing swing = Of(Dickson.StepDown(5));
        Assert.All(swing.PerVoltOfInput, s => Assert.Equal(Quantity.Exact(1, 5), s));
        Assert.Equal(0.04, swing.LossWeight, 1e-15);
        Assert.Equal(4, swing.MaximumCapacitors.Count);
    }

    [Fact]
    public void A_bottom_plate_that_floats_is_named_and_not_taken_as_still()
    {
        Converter converter = Converter.Create("Half").Input("vin").Output("vout").Phases(3)
            .Capacitor("fly", "p", "n", farads: 1e-9)
            .Switch("s1", "vin", "p", 1).Switch("s2", "n", "vout", 1)
            .Switch("s3", "p", "vout", 2).Switch("s4", "n", "gnd", 2).Build();
        BottomPlateSwing swing = Of(converter);
        Assert.Equal(["fly"], swing.Undetermined);
        Assert.False(swing.Maximum.IsDetermined);
        Assert.Equal(0, swing.LossWeight);
    }

    // Closed in 1, 3 and in 2, 4 the plate goes 0, 1/2, 0, 1/2: four steps of 1/2 a period where there were two,
    // ½ · 4 · ¼ = 1/2. So it is over 2 n phases: n times what it is in two.
    [Theory]
    [InlineData(2, 0.25)]
    [InlineData(4, 0.5)]
    [InlineData(6, 0.75)]
    public void A_plate_that_swings_more_than_once_a_period_loses_as_often(int phases, double weight)
    {
        BottomPlateSwing swing = Of(HalfOften(phases));
        Assert.Equal(Quantity.Exact(1, 2), swing.Maximum);
        Assert.Equal(weight, swing.LossWeight, 1e-15);
        Assert.Equal(Quantity.Exact(phases, 8), Assert.Single(swing.LossWeights));
    }

    // The definition as oracle: a small capacitor that follows each bottom plate through a resistance, integrated in
    // small steps over periods long enough to settle. What the resistance takes in one period is α C Σ ½ Δ².
    [Theory]
    [InlineData(4)]
    [InlineData(6)]
    public void The_loss_is_what_a_resistance_takes_that_charges_a_small_capacitor_to_each_potential(int phases)
    {
        Converter[] converters = [HalfOften(phases), SeriesParallel.StepDown(3), BinaryConverter.StepDown(3, 3)];
        foreach (Converter converter in converters)
        {
            ModeAnalysis analysis = ModeAnalysis.Of(converter, converter.Modes[0]);
            BottomPlateSwing swing = BottomPlateSwing.Of(analysis);
            for (int c = 0; c < converter.Capacitors.Count; c++)
            {
                PhaseValues plate = analysis.IdealPoint.NodePotentials[converter.Network.BranchSecond[c]];
                double[] potentials = [.. plate.Select(p => p.ToDouble())];
                Assert.Equal(swing.LossWeights[c].ToDouble(), EnergyOfAPeriod(potentials), 1e-4);
            }
        }
    }

    // R = C = 1, 25 time constants a phase, the midpoint rule; the last of three periods
    private static double EnergyOfAPeriod(double[] potentials)
    {
        const double step = 0.01;
        double voltage = 0, energy = 0;
        for (int period = 0; period < 3; period++)
        {
            energy = 0;
            foreach (double potential in potentials)
            {
                for (int k = 0; k < 2500; k++)
                {
                    double current = (potential - voltage) / (1 + (step / 2));
                    energy += current * current * step;
                    voltage += current * step;
                }
            }
        }

        return energy;
    }

    // the bottom of the upper flying capacitor goes between a third and two thirds, of the lower one between nothing and a third; the
    // capacitors between the rungs lie still
    [Fact]
    public void A_plate_that_never_reaches_the_reference_swings_by_the_difference()
    {
        BottomPlateSwing swing = Of(Ladder.StepDown(3));
        Assert.All(swing.PerVoltOfInput, s => Assert.Contains(s, new[] { Quantity.Exact(1, 3), Quantity.Zero }));
        Assert.Equal(2, swing.PerVoltOfInput.Count(s => s == Quantity.Exact(1, 3)));
    }

    // half of 2 nF lies across the input and carries nothing: it neither swings nor takes a share of the weight
    [Fact]
    public void A_capacitor_across_the_input_takes_no_share()
    {
        Converter converter = Converter.Create("Half").Input("vin").Output("vout")
            .Capacitor("cin", "vin", "gnd", farads: 1e-6).Capacitor("fly", "p", "n", farads: 1e-9)
            .Switch("s1", "vin", "p", 1).Switch("s2", "n", "vout", 1).Switch("s3", "p", "vout", 2).Switch("s4", "n", "gnd", 2).Build();
        Assert.Equal(0.25, Of(converter).LossWeight, 1e-15);
    }

    private static Converter HalfOften(int phases)
    {
        PhaseSet odd = PhaseSet.Of([.. Enumerable.Range(1, phases).Where(j => j % 2 == 1)]);
        PhaseSet even = PhaseSet.Of([.. Enumerable.Range(1, phases).Where(j => j % 2 == 0)]);
        return Converter.Create("Half, often").Input("vin").Output("vout").Phases(phases)
            .Capacitor("fly", "p", "n", farads: 1e-9)
            .Switch("s1", "vin", "p", odd).Switch("s2", "n", "vout", odd)
            .Switch("s3", "p", "vout", even).Switch("s4", "n", "gnd", even)
            .Build();
    }

    private static BottomPlateSwing Of(Converter converter) => BottomPlateSwing.Of(ModeAnalysis.Of(converter, converter.Modes[0]));
}
