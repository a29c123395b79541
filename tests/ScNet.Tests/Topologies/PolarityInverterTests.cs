using Fractions;
using ScNet.Analysis;
using ScNet.Topologies;

namespace ScNet.Tests.Topologies;

/// <summary>Closed forms of the series-parallel inverter: common practice, no source.</summary>
public sealed class PolarityInverterTests : FamilyTests
{
    public static TheoryData<int, int, int, int> Searched => new()
    {
        { 1, 1, 1, 4 }, { 1, 2, 2, 7 }, { 2, 1, 2, 7 }, { 1, 3, 3, 8 }, { 3, 1, 3, 8 },
        { 2, 3, 3, 10 }, { 3, 2, 3, 10 }, { 1, 4, 3, 10 }, { 4, 1, 3, 10 },
    };

    internal override FamilyFacts Facts(int size, double farads, double ohms)
    {
        int n = size;
        Fraction one = new(1, n);
        Dictionary<string, (Fraction, Fraction)> capacitors = [];

        // High leaves charge to the network, as low does, when the load at a negative output takes charge.
        Dictionary<string, (int, Fraction, Fraction)> switches = new()
        {
            ["series1"] = (1, -one, 1),
            [$"series{n + 1}"] = (1, one, one),
        };
        for (int k = 1; k <= n; k++)
        {
            capacitors.Add($"fly{k}", (-one, one));
            switches.Add($"top{k}", (2, -one, new Fraction(n - k + 1, n)));
            switches.Add($"bottom{k}", (2, one, new Fraction(n - k + 1, n)));
        }

        for (int k = 2; k <= n; k++)
        {
            switches.Add($"series{k}", (1, one, one));
        }

        return new FamilyFacts
        {
            N = -n,
            StepDown = PolarityInverter.StepDown(n, farads, ohms),
            StepUp = PolarityInverter.StepUp(n, farads, ohms),
            StepDownWithCurrentLoad = PolarityInverter.StepDown(n, farads, ohms, LoadKind.Current),
            StepUpWithCurrentLoad = PolarityInverter.StepUp(n, farads, ohms, LoadKind.Current),
            Capacitors = capacitors,
            Switches = switches,
            High = (-one, 0),
            Low = (0, 1),
            SlowLimit = one,
            FastLimit = new Fraction(2 * ((3 * n) + 1), n * n),
        };
    }

    [Theory]
    [MemberData(nameof(Searched))]
    public void Every_fraction_with_p_and_q_up_to_five_together_has_its_inverter(int p, int q, int capacitors, int switches)
    {
        foreach (LoadKind load in Enum.GetValues<LoadKind>())
        {
            Converter converter = PolarityInverter.Of(p, q, load: load);
            ModeAnalysis analysis = Analyse(converter);
            Assert.Equal(Quantity.Exact(-p, q), analysis.Ratio);
            Assert.Equal(FlowDetermination.Topology, analysis.ChargeFlow.DeterminedBy);
            Assert.Empty(analysis.Diagnostics);
            Assert.Equal(load == LoadKind.Stiff ? capacitors : capacitors + 1, converter.Capacitors.Count);
            Assert.Equal(switches, converter.Switches.Count);
            Assert.All(analysis.BlockingVoltages.Peaks, peak => Assert.Equal(1, peak.Sign));
            Assert.All(analysis.IdealPoint.CapacitorVoltages.Take(capacitors), voltage => Assert.Equal(1, voltage.Sign));
        }
    }

    [Fact]
    public void Common_factors_do_not_matter() =>
        Assert.Equal(Quantity.Exact(-2, 3), Analyse(PolarityInverter.Of(14, 21)).Ratio);

    [Theory]
    [InlineData(1, 5)]
    [InlineData(5, 1)]
    [InlineData(3, 4)]
    [InlineData(int.MaxValue, 2)]
    public void A_ratio_beyond_three_capacitors_is_refused_with_what_would_do(int p, int q) =>
        Assert.Contains("Cascade", Assert.Throws<ArgumentOutOfRangeException>(() => PolarityInverter.Of(p, q)).Message, StringComparison.Ordinal);
}
