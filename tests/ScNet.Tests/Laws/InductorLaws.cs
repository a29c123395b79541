using CsCheck;
using Fractions;
using MathNet.Numerics.LinearAlgebra;
using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.Laws;

/// <summary>Laws of averages with inductors on random networks, held against dense systems written out here.</summary>
[Trait("Kind", "Law")]
[Trait("Against", "Oracle")]
public class InductorLaws
{
    private static readonly Gen<Converter> s_any = InductiveNetworks.Any;

    [Fact]
    public void Ratio_by_voltages_is_ratio_by_charges_and_power_balances() => LawCheck.Holds(s_any, converter =>
    {
        foreach (ModeOutcome outcome in ConverterAnalysis.Of(converter).Modes)
        {
            if (outcome.Analysis is not { CarriesLoad: true } analysis)
            {
                continue;
            }

            double input = analysis.ChargeFlow.Input.Sum(q => q.ToDouble());
            Assert.Equal(analysis.Ratio.ToDouble(), input, 1e-9 * (1 + Math.Abs(input)));
            AssertSolves(analysis);
        }
    }, found: ["6bp3NHo1T8hMIYQ1"]);

    [Fact]
    public void Ratio_and_capacitor_voltages_are_those_of_a_dense_solution() => LawCheck.Holds(s_any, converter =>
    {
        foreach (ModeOutcome outcome in ConverterAnalysis.Of(converter).Modes)
        {
            (Vector<double> x, Matrix<double> free, double residual) = AveragesByNodes(converter, outcome.Mode);
            bool isShorted = outcome.Diagnostics.Any(d => d.Code is DiagnosticCodes.VoltageConflict or DiagnosticCodes.CapacitorShorted
                or DiagnosticCodes.InputShorted or DiagnosticCodes.OutputShorted);
            if (outcome.Diagnostics.Any(d => d.Code == DiagnosticCodes.VoltageConflict))
            {
                Assert.True(residual > 1e-6, "The dense equations have a solution, but a conflict was told.");
            }

            if (outcome.Analysis is not { } analysis || isShorted)
            {
                continue;
            }

            Assert.InRange(residual, 0, 1e-9);
            Assert.Equal(analysis.CarriesLoad, free.Row(0).AbsoluteMaximum() < 1e-9);
            if (analysis.CarriesLoad)
            {
                WorstErrors.OfRun.Require("ideal ratio with inductors", x[0], analysis.Ratio.ToDouble(), 1 + Math.Abs(x[0]), 1e-8);
            }

            for (int c = 0; c < converter.Capacitors.Count && analysis.Balance == VoltageBalance.Averages; c++)
            {
                if (analysis.Capacitors[c].Voltage.IsDetermined)
                {
                    Assert.InRange(free.Row(1 + c).AbsoluteMaximum(), 0, 1e-9);
                    WorstErrors.OfRun.Require("ideal capacitor voltages with inductors", x[1 + c], analysis.Capacitors[c].Voltage.ToDouble(), 1 + Math.Abs(x[1 + c]), 1e-8);
                }
            }
        }
    });

    [Fact]
    public void The_fast_limit_is_the_voltage_lost_by_a_network_of_constant_currents() => LawCheck.Holds(
        s_any,
        converter =>
        {
            foreach (ModeAnalysis analysis in ConverterAnalysis.Of(converter).Results.Where(a => a.CarriesLoad))
            {
                LimitSolution? oracle = LimitOracles.Fast(converter, analysis.Mode);
                Assert.NotNull(oracle);
                LimitLaws.Require("fast limit with inductors", oracle.Ohms, analysis.FastSwitchingLimit.Ohms);
                LimitLaws.AssertNear(oracle.Switches, analysis.ChargeFlow.Switches, "switches");
                LimitLaws.AssertNear(oracle.Inductors, analysis.ChargeFlow.Inductors, "inductors");
            }
        },
        300,
        found: ["9vv-vS87WZaKQtXl3"]);

    [Fact]
    public void Charge_sharing_is_the_voltage_lost_by_a_network_of_impulses_and_steady_currents()
    {
        int compared = 0, contradictory = 0;
        LawCheck.Holds(
            s_any,
            converter =>
            {
                foreach (ModeAnalysis analysis in ConverterAnalysis.Of(converter).Results.Where(a => a.CarriesLoad))
                {
                    if (LimitOracles.Sharing(converter, analysis.Mode) is not { } oracle)
                    {
                        contradictory++;
                        continue;
                    }

                    compared++;
                    LimitLaws.Require("charge sharing with inductors", oracle.Ohms, analysis.ChargeSharing!.OhmsAtOneHertz);
                    Assert.NotNull(LimitOracles.Sharing(converter, analysis.Mode, analysis.ChargeFlow.Capacitors));
                }
            },
            found: ["7vqojRFxEz_0CRvm1"]);
        Assert.True(compared > 20 * contradictory, $"{compared} compared, {contradictory} without a limit.");
    }

    [Fact]
    public void Volt_seconds_of_every_inductor_vanish() => LawCheck.Holds(s_any, converter =>
    {
        foreach (ModeAnalysis analysis in ConverterAnalysis.Of(converter).Results)
        {
            foreach (InductorAnalysis inductor in analysis.Inductors.Where(l => l.Voltage.All(v => v.IsDetermined)))
            {
                Fraction sum = Fraction.Zero;
                foreach (Phase phase in converter.Phases)
                {
                    sum += phase.Duty * inductor.Voltage[phase.Number].ToFraction();
                }

                Assert.Equal(Fraction.Zero, sum);
            }
        }
    });

    [Fact]
    public void Charge_sharing_is_the_low_frequency_limit_of_the_exact_impedance() => LawCheck.Holds(RandomNetworks.Any, sketch =>
    {
        Converter converter = (sketch with { Load = LoadKind.Current }).Build();
        foreach (ModeAnalysis analysis in ConverterAnalysis.Of(converter).Results)
        {
            double slow = analysis.SlowSwitchingLimit.OhmsAtOneHertz, sharing = analysis.ChargeSharing!.OhmsAtOneHertz;
            const double hertz = 1e-7;
            double exact = OutputImpedance.Of(analysis).Ohms(hertz) * hertz;

            // what else is left at this frequency is of the order of the fast limit
            Assert.Equal(sharing, exact, (1e-7 * slow) + (20 * hertz * analysis.FastSwitchingLimit.Ohms));
        }
    });

    // Unknown: output, capacitors, then every node in every phase. One row per closed switch, capacitor and source in every
    // phase, one per inductor (and load current) over the period. The free movements are columns.
    private static (Vector<double> Solution, Matrix<double> Free, double Residual) AveragesByNodes(Converter converter, Mode mode)
    {
        int nodes = converter.Nodes.Count, offset = 1 + converter.Capacitors.Count;
        List<(double[] Row, double Right)> rows = [];
        int At(string node, Phase phase) => offset + ((phase.Number - 1) * nodes) + converter.Nodes.PositionOf(node);
        double[] Row() => new double[offset + (converter.Phases.Count * nodes)];
        double[] load = Row();
        foreach (Phase phase in converter.Phases)
        {
            Add([(Converter.ReferenceNode, 1)], null, 0);
            Add([(converter.InputNode, 1)], null, 1);
            load[At(converter.OutputNode, phase)] += phase.Duty.ToDouble();
            if (converter.Load == LoadKind.Stiff)
            {
                Add([(converter.OutputNode, 1)], 0, 0);
            }

            for (int c = 0; c < converter.Capacitors.Count; c++)
            {
                Add([(converter.Capacitors[c].PositiveNode, 1), (converter.Capacitors[c].BottomNode, -1)], 1 + c, 0);
            }

            for (int s = 0; s < converter.Switches.Count; s++)
            {
                if (mode.ClosedPhases[s].Contains(phase.Number))
                {
                    Add([(converter.Switches[s].FirstNode, 1), (converter.Switches[s].SecondNode, -1)], null, 0);
                }
            }

            void Add((string Node, int Sign)[] terms, int? voltage, double right)
            {
                double[] row = Row();
                foreach ((string node, int sign) in terms)
                {
                    row[At(node, phase)] += sign;
                }

                if (voltage is { } v)
                {
                    row[v] = -1;
                }

                rows.Add((row, right));
            }
        }

        if (converter.Load == LoadKind.Current)
        {
            load[0] = -1;
            rows.Add((load, 0));
        }

        foreach (Inductor inductor in converter.Inductors)
        {
            double[] row = Row();
            foreach (Phase phase in converter.Phases)
            {
                row[At(inductor.FirstNode, phase)] += phase.Duty.ToDouble();
                row[At(inductor.SecondNode, phase)] -= phase.Duty.ToDouble();
            }

            rows.Add((row, 0));
        }

        Matrix<double> matrix = Matrix<double>.Build.DenseOfRowArrays(rows.Select(r => r.Row).ToArray());
        Vector<double> right = Vector<double>.Build.DenseOfEnumerable(rows.Select(r => r.Right));
        MathNet.Numerics.LinearAlgebra.Factorization.Svd<double> svd = matrix.Svd();
        Vector<double> x = Vector<double>.Build.Dense(matrix.ColumnCount);
        List<Vector<double>> free = [];
        for (int k = 0; k < matrix.ColumnCount; k++)
        {
            Vector<double> way = svd.VT.Row(k);
            if (k < svd.S.Count && svd.S[k] > 1e-10)
            {
                x += way * (svd.U.Column(k) * right / svd.S[k]);
            }
            else
            {
                free.Add(way);
            }
        }

        Matrix<double> open = free.Count == 0 ? Matrix<double>.Build.Dense(x.Count, 1) : Matrix<double>.Build.DenseOfColumnVectors(free);
        return (x, open, ((matrix * x) - right).AbsoluteMaximum());
    }

    // The flow of the capacitors is that of the slow limit, the other one that of the fast limit: a capacitor that keeps its
    // voltage (in a loop with closed switches, say) carries nothing in the one and a part of the current in the other, and
    // inductors whose currents topology leaves open carry others. So each obeys Kirchhoff's current law where the other one's
    // elements are contracted, and both together where all is exact.
    private static void AssertSolves(ModeAnalysis analysis)
    {
        ChargeFlow flow = analysis.ChargeFlow;
        foreach (Phase phase in analysis.Converter.Phases)
        {
            foreach (Inductor inductor in analysis.Converter.Inductors)
            {
                double charge = flow.Inductors[inductor.Name][phase.Number].ToDouble();
                Assert.Equal(analysis.Inductors[inductor.Name].Current.ToDouble() * phase.Duty.ToDouble(), charge, 1e-9 * (1 + Math.Abs(charge)));
            }
        }

        NodeSets byCapacitors = NodeSets.JoinedByCapacitors(analysis.Converter), single = NodeSets.Single(analysis.Converter);
        NodeBalance.AssertNoSetGainsCharge(analysis, BySwitches, capacitors: true, switches: false);
        NodeBalance.AssertNoSetGainsCharge(analysis, _ => byCapacitors, capacitors: false, switches: true);
        if (flow.DeterminedBy == FlowDetermination.Topology && flow.Switches.Concat(flow.Inductors).SelectMany(s => s).All(q => q.IsExact))
        {
            NodeBalance.AssertNoSetGainsCharge(analysis, _ => single, capacitors: true, switches: true);
        }

        NodeSets BySwitches(int phase) => analysis.Converter.Inductors.Where(l => flow.Inductors[l.Name].Any(q => !q.IsExact))
            .Aggregate(NodeSets.JoinedBySwitches(analysis.Converter, analysis.Mode, phase), (sets, l) => sets.With(l.FirstNode, l.SecondNode));
    }
}
