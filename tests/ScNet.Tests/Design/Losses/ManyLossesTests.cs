using ScNet.Design.Losses;
using ScNet.SteadyState;

namespace ScNet.Tests.Design.Losses;

/// <summary>Losses of which one sort is far more numerous than the others.</summary>
public sealed class ManyLossesTests
{
    // a diode at each of 40 edges, of one switch; the switches' own losses are a handful
    [Fact]
    public void A_switch_that_changes_at_every_edge_has_one_loss_of_all_its_diodes()
    {
        int[] odd = [.. Enumerable.Range(0, 20).Select(k => (2 * k) + 1)], even = [.. odd.Select(k => k + 1)];
        Converter stage = Converter.Create("step-down").Input("vin").Output("vout").Phases(40).Switch("high", "vin", "x", PhaseSet.Of(odd), 0.1)
            .Switch("low", "x", "gnd", PhaseSet.Of(even), 0.1).Inductor("coil", "x", "vout", henries: 1, ohms: 0.1).Build();
        LossBudget budget = LossModelTests.Budget(Sized.Of(stage, deadSeconds: 1e-9), new OperatingPoint(2, 0.5, 1e5));
        LossModelTests.Near(40 * 1e5 * 1e-9 * 0.7 * 0.5, Assert.Single(budget.Losses, l => l.Kind == LossKind.BodyDiodes).Watts, 1e-9);
    }

    // 40 equal ones beside one another share what they lose in equal parts: the divider by two of 40 times the capacitance, (1/4C f) coth(1/(4 C f r)) with a
    // loop of r = 4 Ω, less these 4 Ω that conduct
    [Fact]
    public void Capacitors_side_by_side_share_a_loss_in_equal_parts()
    {
        ConverterBuilder half = Converter.Create("half").Input("vin").Output("vout")
            .Switch("s1", "vin", "p", 1, 2).Switch("s2", "n", "vout", 1, 2).Switch("s3", "p", "vout", 2, 2).Switch("s4", "n", "gnd", 2, 2);
        string[] names = [.. Enumerable.Range(1, 40).Select(k => $"fly{k}")];
        foreach (string name in names)
        {
            half.Capacitor(name, "p", "n", 1e-9);
        }

        LossBudget budget = LossModelTests.Budget(Sized.Bare(half.Build()), new OperatingPoint(2, 0.5, 1e6));
        double sharing = 1 / (4 * 40e-9 * 1e6), each = ((sharing / Math.Tanh(sharing / 4)) - 4) * 0.25 / 40;
        Loss[] losses = [.. budget.Losses.Where(l => l.Kind == LossKind.ChargeSharing)];
        Assert.Equal(names, losses.Select(l => l.Element));
        Assert.All(losses, l => LossModelTests.Near(each, l.Watts, 1e-9));
    }
}
