using System.Runtime.CompilerServices;
using CsCheck;
using MathNet.Numerics.LinearAlgebra;
using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>Laws of random networks with several outputs at any frequency.</summary>
[Trait("Kind", "Law")]
[Trait("Against", "Oracle")]
public sealed class MultiPortLaws
{
    private static readonly double[] s_frequenciesHz = [1e-2, 0.1, 0.5, 4];

    /// <summary>Matrix exponentials of the nodal equations, which have no tree, no loops and no flows.</summary>
    [Fact]
    public void Outputs_see_what_matrix_exponentials_of_the_nodal_equations_say() => Check(
        Gen.OneOf(OutputNetworks.Plain, OutputNetworks.Plated),
        500,
        (analysis, model) =>
        {
            OutputsOracle oracle = new(analysis.Converter, analysis.Mode);
            foreach (double hertz in s_frequenciesHz)
            {
                MultiPortPoint found = model.MultiPort.At(hertz);
                Matrix<double> expected = oracle.ByExponential(hertz);
                for (int i = 0; i < found.Ratios.Count; i++)
                {
                    for (int k = 0; k < found.Ratios.Count && found.Ratios[i] is not null; k++)
                    {
                        if (found.Ohms[i, k] is { } ohms)
                        {
                            WorstErrors.OfRun.Require("impedances of several outputs", -expected[i + 1, k + 1], ohms, Scale(found, i, k), 1e-8);
                            WorstErrors.OfRun.Require("ratios of several outputs", expected[i + 1, 0], found.Ratios[i]!.Value, 1, 1e-8);
                            WorstErrors.OfRun.Require("current ratios of several outputs", expected[0, k + 1], found.CurrentRatios[k]!.Value, 1, 1e-8);
                        }
                    }
                }
            }
        });

    /// <summary>Reciprocity with the network whose phases follow one another in the opposite order.</summary>
    [Fact]
    public void Reversed_phases_exchange_rows_and_columns() => Check(
        Gen.OneOf(OutputNetworks.Plain, OutputNetworks.Plated, OutputNetworks.Inductive),
        500,
        (analysis, model) =>
        {
            Converter reversed = OutputNetworks.Reversed(analysis.Converter);
            SteadyStateModel other = SteadyStateModel.Of(ModeAnalysis.Of(reversed, reversed.Modes[0]));
            foreach (double hertz in s_frequenciesHz)
            {
                if (At(model, hertz) is not { } found || At(other, hertz) is not { } back)
                {
                    continue;
                }

                ForEachPair(found, (i, k) =>
                {
                    Close(back.Ohms[k, i]!.Value, found.Ohms[i, k]!.Value, Scale(found, i, k));
                    Close(back.CurrentRatios[i]!.Value, found.Ratios[i]!.Value, LargestRatio(found));
                    if (analysis.Converter.Phases.Count == 2)
                    {
                        Close(found.Ohms[k, i]!.Value, found.Ohms[i, k]!.Value, Scale(found, i, k));
                    }
                });
            }
        });

    /// <summary>V_in I_in - Σ V_i I_i is nowhere negative.</summary>
    [Fact]
    public void No_loads_make_power() => Check(
        Gen.OneOf(OutputNetworks.Plain, OutputNetworks.Plated, OutputNetworks.Inductive),
        350,
        (analysis, model) =>
        {
            Random random = new(analysis.Converter.Nodes.Count);
            foreach (double hertz in s_frequenciesHz)
            {
                if (At(model, hertz) is not { } found)
                {
                    continue;
                }

                for (int draw = 0; draw < 6; draw++)
                {
                    double[] amperes = [.. found.Ratios.Select(r => r is null ? 0 : random.NextDouble() - 0.5)];
                    MultiPortOperation at = found.Operate(random.NextDouble() * LargestOhms(found), amperes);
                    double size = Math.Abs(at.InputWatts) + at.OutputVolts.Zip(amperes, (v, a) => Math.Abs((v ?? 0) * a)).Sum() + LargestOhms(found);
                    Assert.True(at.DissipationWatts >= -1e-9 * size, $"{at}");
                }
            }
        });

    /// <summary>Each further output as the only one: another network, another state, no matrix.</summary>
    [Fact]
    public void An_output_sees_of_itself_what_it_sees_as_the_main_one() => Check(
        Gen.OneOf(OutputNetworks.Plain, OutputNetworks.Plated, OutputNetworks.Inductive),
        350,
        (analysis, model) =>
        {
            foreach (FurtherOutput output in analysis.Converter.FurtherOutputs.Where(o => IsPlain(analysis.Converter, o)))
            {
                Converter single = OutputNetworks.MadeMain(analysis.Converter, output, ReservoirFarads);
                if (ModeAnalysis.Try(single, single.Modes[0]).Analysis is not { } alone)
                {
                    continue;
                }

                foreach (double hertz in s_frequenciesHz)
                {
                    if (At(model, hertz) is { } found && found.Ratios[output.Name] is { } ratio)
                    {
                        TwoPortPoint expected = SteadyStateModel.Of(alone).TwoPort.At(hertz);
                        double allowed = analysis.Converter.Load == LoadKind.Stiff ? 1e-7 : 1e-10;
                        Close(expected.Ohms, found.Ohms[output.Name, output.Name]!.Value, expected.Ohms, allowed);
                        Close(expected.Ratio, ratio, LargestRatio(found), allowed);
                        Close(expected.CurrentRatio, found.CurrentRatios[output.Name]!.Value, LargestRatio(found), allowed);
                    }
                }
            }
        });

    /// <summary>The charge sharing of the averages at low, the fast limit at high frequency, off the diagonal too.</summary>
    [Fact]
    public void Both_ends_are_the_matrices_of_the_averages() => Check(
        OutputNetworks.Plain,
        500,
        (analysis, model) =>
        {
            OutputMatrices averages = analysis.Outputs;
            const double Low = 1e-7, High = 1e7;
            (MultiPortPoint slow, MultiPortPoint fast) = (model.MultiPort.At(Low), model.MultiPort.At(High));
            ForEachPair(slow, (i, k) =>
            {
                Assert.True(averages.Outputs[i].IsSupplied && averages.Outputs[k].IsSupplied);
                double largest = Math.Sqrt(averages.SlowSwitchingLimit[i, i]!.Value * averages.SlowSwitchingLimit[k, k]!.Value);
                double sharing = Math.Sqrt(averages.ChargeSharing[i, i]!.Value * averages.ChargeSharing[k, k]!.Value);
                double soft = Math.Sqrt(averages.FastSwitchingLimit[i, i]!.Value * averages.FastSwitchingLimit[k, k]!.Value) * Low;
                Close(averages.ChargeSharing[i, k]!.Value, slow.Ohms[i, k]!.Value * Low, (1e-4 * sharing) + (1e-6 * largest) + (10 * soft), 1);
                Close(averages.FastSwitchingLimit[i, k]!.Value, fast.Ohms[i, k]!.Value, Scale(fast, i, k), 1e-5);
            });
        });

    [Fact]
    public void The_comparison_sees_a_difference()
    {
        Assert.ThrowsAny<Xunit.Sdk.XunitException>(() => Close(1, 1 + 1e-6, 1));
        Close(1, 1 + 1e-12, 1);
    }

    private const double ReservoirFarads = 1e10;

    private static bool IsPlain(Converter converter, FurtherOutput output) => output.ReturnNode == Converter.ReferenceNode
        && output.Node != converter.InputNode && output.Node != converter.OutputNode;

    private static double Scale(MultiPortPoint point, int i, int k) =>
        Math.Sqrt(Math.Abs(point.Ohms[i, i]!.Value * point.Ohms[k, k]!.Value)) is var own && own > 0 ? own : 1e-6 * LargestOhms(point);

    private static double LargestOhms(MultiPortPoint point) => Enumerable.Range(0, point.Ratios.Count).Max(i => Math.Abs(point.Ohms[i, i] ?? 0));

    private static double LargestRatio(MultiPortPoint point) => Math.Max(1, point.Ratios.Concat(point.CurrentRatios).Max(r => Math.Abs(r ?? 0)));

    private static void ForEachPair(MultiPortPoint point, Action<int, int> law)
    {
        for (int i = 0; i < point.Ratios.Count; i++)
        {
            for (int k = 0; k < point.Ratios.Count; k++)
            {
                if (point.Ohms[i, k] is not null)
                {
                    law(i, k);
                }
            }
        }
    }

    private static void Close(double expected, double actual, double scale, double allowed = 1e-9) =>
        Assert.True(Math.Abs(expected - actual) <= allowed * scale, $"Expected {expected:R}, but got {actual:R} ({Math.Abs(expected - actual) / scale:e1}).");

    private static MultiPortPoint? At(SteadyStateModel model, double hertz)
    {
        try
        {
            return model.MultiPort.At(hertz);
        }
        catch (ScNetException exception) when (exception.Diagnostics.All(d => d.Code == DiagnosticCodes.NoPeriodicState))
        {
            return null;
        }
    }

    private static void Check(Gen<Converter> converters, long count, Action<ModeAnalysis, SteadyStateModel> law, [CallerFilePath] string file = "", [CallerMemberName] string name = "")
    {
        int checkedCount = 0;
        converters.Holds(
            converter =>
            {
                if (converter.FurtherOutputs.Count == 0 || ModeAnalysis.Try(converter, converter.Modes[0]).Analysis is not { } analysis)
                {
                    return;
                }

                checkedCount++;
                law(analysis, SteadyStateModel.Of(analysis));
            },
            count,
            c => ScNet.Netlists.NetlistWriter.ToToml(c),
            file: file,
            name: name);
        Assert.True(LawCheck.IsOneCase || checkedCount > count / 8, $"Only {checkedCount} had a result.");
    }
}
