using Fractions;
using ScNet.Analysis;

namespace ScNet.Tests.Laws;

/// <summary>Kirchhoff's voltage law at the ideal point, on networks drawn at random.</summary>
[Trait("Kind", "Law")]
public sealed class VoltageLaws
{
    [Fact]
    public void The_ports_have_their_potentials() => LawSample.Check((_, analysis) =>
    {
        Converter converter = analysis.Converter;
        Assert.All(Potentials(analysis, Converter.ReferenceNode), v => Assert.Equal(0, v));
        Assert.All(Potentials(analysis, converter.InputNode), v => Assert.Equal(1, v));
        PhaseValues output = Potentials(analysis, converter.OutputNode);
        if (converter.Load == LoadKind.Stiff)
        {
            Assert.All(output, v => LawSample.AssertSame(analysis.Ratio, v, "output"));
        }
        else if (output.All(v => v.IsDetermined))
        {
            // with a current load the average can be fixed where single phases are not
            Fraction average = output.Select((v, j) => v.ToFraction() * converter.Phases[j].Duty).Aggregate((a, b) => a + b);
            LawSample.AssertSame(Quantity.Exact(average), analysis.Ratio, "average output");
        }
    });

    [Fact]
    public void Across_every_capacitor_the_potentials_differ_by_its_voltage() => LawSample.Check((_, analysis) =>
    {
        Converter converter = analysis.Converter;
        for (int c = 0; c < converter.Capacitors.Count; c++)
        {
            Quantity voltage = analysis.IdealPoint.CapacitorVoltages[c];
            PhaseValues positive = Potentials(analysis, converter.Capacitors[c].PositiveNode);
            PhaseValues bottom = Potentials(analysis, converter.Capacitors[c].BottomNode);
            for (int j = 1; j <= converter.Phases.Count; j++)
            {
                if (positive[j].IsDetermined && bottom[j].IsDetermined)
                {
                    LawSample.AssertSumIsZero([voltage, bottom[j], -positive[j]], $"c{c}, phase {j}");
                }
                else if (voltage.IsDetermined)
                {
                    Assert.Equal(positive[j].IsDetermined, bottom[j].IsDetermined);
                }
            }
        }
    });

    [Fact]
    public void Closed_switches_join_their_nodes_and_open_ones_block_the_difference() => LawSample.Check((_, analysis) =>
    {
        Converter converter = analysis.Converter;
        for (int s = 0; s < converter.Switches.Count; s++)
        {
            PhaseValues first = Potentials(analysis, converter.Switches[s].FirstNode);
            PhaseValues second = Potentials(analysis, converter.Switches[s].SecondNode);
            PhaseValues blocked = analysis.BlockingVoltages.Switches[s];
            for (int j = 1; j <= converter.Phases.Count; j++)
            {
                if (LawSample.IsClosed(analysis, s, j))
                {
                    Assert.Equal(first[j], second[j]);
                    Assert.Equal(0, blocked[j]);
                }
                else if (first[j].IsDetermined && second[j].IsDetermined)
                {
                    LawSample.AssertSumIsZero([blocked[j], second[j], -first[j]], $"s{s}, phase {j}");
                }
            }

            Assert.Equal(blocked.Peak(), analysis.BlockingVoltages.Peaks[s]);
        }
    });

    [Fact]
    public void A_determined_voltage_is_a_fraction() => LawSample.Check((_, analysis) =>
    {
        Assert.Equal(QuantityKind.Exact, analysis.Ratio.Kind);
        Assert.All(analysis.IdealPoint.CapacitorVoltages, v => Assert.NotEqual(QuantityKind.Numeric, v.Kind));
        Assert.All(analysis.IdealPoint.NodePotentials.SelectMany(v => v), v => Assert.NotEqual(QuantityKind.Numeric, v.Kind));
    });

    private static PhaseValues Potentials(ModeAnalysis analysis, string node) =>
        analysis.IdealPoint.NodePotentials[node];
}
