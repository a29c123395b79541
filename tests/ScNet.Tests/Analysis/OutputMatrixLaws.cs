using System.Runtime.CompilerServices;
using System.Text.Json.Nodes;
using CsCheck;
using ScNet.Analysis;
using ScNet.Results;

namespace ScNet.Tests.Analysis;

/// <summary>Laws of random networks with several outputs in the averages.</summary>
[Trait("Kind", "Law")]
public sealed class OutputMatrixLaws
{
    [Fact]
    public void Further_outputs_at_rest_change_nothing() => Check(400, analysis =>
    {
        ModeAnalysis without = ModeAnalysis.Of(OutputNetworks.With(analysis.Converter));
        OutputMatrices outputs = analysis.Outputs;
        JsonNode with = JsonNode.Parse(AnalysisDocument.Of(analysis.Converter, [analysis.Outcome]).ToJson())!["modes"]![0]!;
        Assert.True(with.AsObject().Remove("outputs"));
        JsonArray diagnostics = with["diagnostics"]!.AsArray();
        Assert.Equal(outputs.Diagnostics.Count, diagnostics.RemoveAll(d => outputs.Diagnostics.Any(own => own.Message == d!["message"]!.GetValue<string>())));
        Assert.Equal(JsonNode.Parse(AnalysisDocument.Of(without.Converter, [without.Outcome]).ToJson())!["modes"]![0]!.ToJsonString(), with.ToJsonString());
        Assert.Equal(without.SlowSwitchingLimit.OhmsAtOneHertz, outputs.SlowSwitchingLimit[0, 0]);
        Assert.Equal(without.FastSwitchingLimit.Ohms, outputs.FastSwitchingLimit[0, 0]);
        Assert.Equal(without.ChargeSharing?.OhmsAtOneHertz ?? without.SlowSwitchingLimit.OhmsAtOneHertz, outputs.ChargeSharing[0, 0]);
        Assert.Equal(without.Ratio, outputs.Outputs[0].Ratio);
    });

    /// <summary>Each further output as the only one: another network, other loops, no matrix.</summary>
    [Fact]
    public void An_output_sees_of_itself_what_it_sees_as_the_main_one()
    {
        int supplied = 0, others = 0;
        Check(900, analysis =>
        {
            foreach (FurtherOutput output in analysis.Converter.FurtherOutputs)
            {
                if (output.ReturnNode != Converter.ReferenceNode || output.Node == analysis.Converter.InputNode || output.Node == analysis.Converter.OutputNode)
                {
                    continue;
                }

                OutputAnalysis own = analysis.Outputs.Outputs[output.Name];
                Converter single = OutputNetworks.MadeMain(analysis.Converter, output, ReservoirFarads);
                ModeOutcome alone = ModeAnalysis.Try(single, single.Modes[0]);
                if (!own.IsSupplied || own.Ratio == Quantity.Zero)
                {
                    Assert.False(alone.HasResult);
                    others++;
                    continue;
                }

                supplied++;
                Assert.True(alone.HasResult, string.Join('\n', alone.Diagnostics));
                Assert.Equal(alone.Analysis!.Ratio, own.Ratio);
                double allowed = analysis.Converter.Load == LoadKind.Stiff ? 1e-6 : 1e-9, slow = alone.Analysis.SlowSwitchingLimit.OhmsAtOneHertz;
                OutputMatrices outputs = analysis.Outputs;

                // the reservoir that stands for a stiff output has an impedance of its own, which is all there is where no capacitor moves
                double size = slow + (1 / (ReservoirFarads * allowed));
                Close(slow, outputs.SlowSwitchingLimit[output.Name, output.Name], size, allowed);
                Close(alone.Analysis.ChargeSharing!.OhmsAtOneHertz, outputs.ChargeSharing[output.Name, output.Name], size, allowed);
                Close(alone.Analysis.FastSwitchingLimit.Ohms, outputs.FastSwitchingLimit[output.Name, output.Name], alone.Analysis.FastSwitchingLimit.Ohms, allowed);
                if (own.ChargeFlow!.DeterminedBy == FlowDetermination.Topology && alone.Analysis.ChargeFlow.DeterminedBy == FlowDetermination.Topology)
                {
                    Assert.Equal(
                        alone.Analysis.ChargeFlow.Capacitors.Take(own.ChargeFlow.Capacitors.Count).Select(c => c.ToString()), own.ChargeFlow.Capacitors.Select(c => c.ToString()));
                }
            }
        });
        Assert.True(LawCheck.IsOneCase || (supplied > 40 && others > 20), $"{supplied} and {others}");
    }

    /// <summary>The same with inductors, whose currents the further output shares.</summary>
    [Fact]
    public void With_inductors_too_an_output_sees_of_itself_what_it_sees_as_the_main_one()
    {
        int supplied = 0, withCurrent = 0;
        Check(2000, analysis =>
        {
            foreach (FurtherOutput output in analysis.Converter.FurtherOutputs)
            {
                if (output.ReturnNode != Converter.ReferenceNode || output.Node == analysis.Converter.InputNode || output.Node == analysis.Converter.OutputNode)
                {
                    continue;
                }

                OutputMatrices outputs = analysis.Outputs;
                Converter single = OutputNetworks.MadeMain(analysis.Converter, output, ReservoirFarads);
                if (!outputs.Outputs[output.Name].IsSupplied || outputs.Outputs[output.Name].Ratio == Quantity.Zero)
                {
                    continue;
                }

                ModeOutcome outcome = ModeAnalysis.Try(single, single.Modes[0]);
                if (outcome.Diagnostics.Any(d => d.Code == DiagnosticCodes.InductorInterrupted))
                {
                    // the main load was the only path of its current
                    continue;
                }

                supplied++;
                Assert.True(outcome.HasResult, string.Join('\n', outcome.Diagnostics));
                ModeAnalysis alone = outcome.Analysis!;
                Assert.Equal(alone.Ratio, outputs.Outputs[output.Name].Ratio);
                double fast = alone.FastSwitchingLimit.Ohms, slow = alone.SlowSwitchingLimit.OhmsAtOneHertz + 1e-2;
                Close(fast, outputs.FastSwitchingLimit[output.Name, output.Name], fast, 1e-8);

                // slower than any frequency inductors ring with a reservoir, however large it is: then it is no stiff output
                if (analysis.Converter.Load == LoadKind.Current)
                {
                    Close(alone.SlowSwitchingLimit.OhmsAtOneHertz, outputs.SlowSwitchingLimit[output.Name, output.Name], slow, 1e-8);
                    Close(alone.ChargeSharing!.OhmsAtOneHertz, outputs.ChargeSharing[output.Name, output.Name], slow, 1e-8);
                    withCurrent++;
                }
            }
        }, OutputNetworks.Inductive);
        Assert.True(LawCheck.IsOneCase || (supplied > 40 && withCurrent > 3), $"Only {supplied} and {withCurrent}.");
    }

    /// <summary>Reciprocity: two phases run backwards are the same, more are not.</summary>
    [Fact]
    public void Reversed_phases_exchange_rows_and_columns()
    {
        int askew = 0;
        Check(900, analysis =>
        {
            Converter reversed = OutputNetworks.Reversed(analysis.Converter);
            OutputMatrices found = analysis.Outputs, back = ModeAnalysis.Of(reversed, reversed.Modes[0]).Outputs;

            // what rounding leaves where an output moves no capacitor
            double dust = 1e-6 * analysis.Converter.Capacitors.Select(c => 1 / c.Farads).DefaultIfEmpty().Max();
            ForEachPair(found, (i, k) =>
            {
                foreach ((OutputMatrix<double?> own, OutputMatrix<double?> other) in new[]
                {
                    (found.SlowSwitchingLimit, back.SlowSwitchingLimit), (found.ChargeSharing, back.ChargeSharing), (found.FastSwitchingLimit, back.FastSwitchingLimit),
                })
                {
                    double scale = Math.Sqrt(found.SlowSwitchingLimit[i, i]!.Value * found.SlowSwitchingLimit[k, k]!.Value) + Math.Abs(own[i, k]!.Value) + dust;
                    Close(other[k, i]!.Value, own[i, k], scale);
                    if (analysis.Converter.Phases.Count == 2)
                    {
                        Close(own[k, i]!.Value, own[i, k], scale);
                    }

                    askew += i < k && Math.Abs(own[i, k]!.Value - own[k, i]!.Value) > 1e-3 * scale ? 1 : 0;
                }

                Close(found.FastSwitchingLimit[k, i]!.Value, found.FastSwitchingLimit[i, k], Math.Abs(found.FastSwitchingLimit[i, k]!.Value));
            });
        });
        Assert.True(LawCheck.IsOneCase || askew > 20, $"Only {askew} were not symmetric.");
    }

    /// <summary>Iᵀ R I is the dissipation in the slow and in the fast limit, which no flow makes negative.</summary>
    [Fact]
    public void No_loads_make_power() => Check(400, analysis =>
    {
        OutputMatrices found = analysis.Outputs;
        Random random = new(analysis.Converter.Nodes.Count);
        for (int draw = 0; draw < 5; draw++)
        {
            double[] amperes = [.. found.Outputs.Select(o => o.IsSupplied ? random.NextDouble() - 0.5 : 0)];
            foreach (OutputMatrix<double?> limit in new[] { found.SlowSwitchingLimit, found.ChargeSharing, found.FastSwitchingLimit })
            {
                double power = 0, size = 0;
                ForEachPair(found, (i, k) =>
                {
                    power += amperes[i] * amperes[k] * limit[i, k]!.Value;
                    size += Math.Abs(amperes[i] * amperes[k] * limit[i, k]!.Value);
                });
                Assert.True(power >= -1e-9 * size, $"{power} W");
            }
        }
    });

    /// <summary>A load between two nodes draws from one and gives to the other.</summary>
    [Fact]
    public void A_load_between_two_outputs_sees_the_difference_of_both()
    {
        int checkedCount = 0;
        Check(700, analysis =>
        {
            foreach (FurtherOutput output in analysis.Converter.FurtherOutputs.Where(o => o.ReturnNode != Converter.ReferenceNode && o.Node != Converter.ReferenceNode))
            {
                Converter three = OutputNetworks.With(analysis.Converter, ("between", output.Node, output.ReturnNode), ("first", output.Node, "gnd"), ("second", output.ReturnNode, "gnd"));
                if (ModeAnalysis.Of(three, three.Modes[0]).Outputs is not { } found || found.Outputs.Any(o => !o.IsSupplied))
                {
                    continue;
                }

                checkedCount++;
                foreach (OutputMatrix<double?> limit in new[] { found.SlowSwitchingLimit, found.ChargeSharing, found.FastSwitchingLimit })
                {
                    double scale = Math.Max(limit["first", "first"]!.Value, limit["second", "second"]!.Value);
                    for (int i = 0; i < 4; i++)
                    {
                        Close(limit[i, 2]!.Value - limit[i, 3]!.Value, limit[i, 1], Math.Max(scale, Math.Abs(limit[i, i]!.Value)));
                        Close(limit[2, i]!.Value - limit[3, i]!.Value, limit[1, i], Math.Max(scale, Math.Abs(limit[i, i]!.Value)));
                    }
                }

                Close(found.Outputs["first"].Ratio.ToDouble() - found.Outputs["second"].Ratio.ToDouble(), found.Outputs["between"].Ratio.ToDouble(), 1);
            }
        });
        Assert.True(LawCheck.IsOneCase || checkedCount > 12, $"Only {checkedCount} were checked.");
    }

    [Fact]
    public void The_order_of_outputs_does_not_matter() => Check(300, analysis =>
    {
        Converter turned = OutputNetworks.With(analysis.Converter, [.. analysis.Converter.FurtherOutputs.Reverse().Select(o => (o.Name, o.Node, o.ReturnNode))]);
        OutputMatrices found = analysis.Outputs, other = ModeAnalysis.Of(turned, turned.Modes[0]).Outputs;
        string[] names = [.. found.Outputs.Select(o => o.Name)];
        foreach (string first in names)
        {
            Assert.Equal(found.Outputs[first].Ratio, other.Outputs[first].Ratio);
            foreach (string second in names.Where(n => found.Outputs[first].IsSupplied && found.Outputs[n].IsSupplied))
            {
                double scale = Math.Sqrt(found.SlowSwitchingLimit[first, first]!.Value * found.SlowSwitchingLimit[second, second]!.Value);
                Close(found.SlowSwitchingLimit[first, second]!.Value, other.SlowSwitchingLimit[first, second], scale);
                Close(found.ChargeSharing[first, second]!.Value, other.ChargeSharing[first, second], scale);
                Close(found.FastSwitchingLimit[first, second]!.Value, other.FastSwitchingLimit[first, second], 1 + Math.Abs(found.FastSwitchingLimit[first, second]!.Value));
            }
        }
    });

    private const double ReservoirFarads = 1e9;

    private static void ForEachPair(OutputMatrices found, Action<int, int> law)
    {
        for (int i = 0; i < found.Outputs.Count; i++)
        {
            for (int k = 0; k < found.Outputs.Count; k++)
            {
                if (found.Outputs[i].IsSupplied && found.Outputs[k].IsSupplied)
                {
                    law(i, k);
                }
            }
        }
    }

    private static void Close(double expected, double? actual, double scale, double allowed = 1e-9) =>
        Assert.True(Math.Abs(expected - actual!.Value) <= allowed * scale, $"Expected {expected:R}, but got {actual:R} ({Math.Abs(expected - actual.Value) / scale:e1}).");

    private static void Check(long count, Action<ModeAnalysis> law, Gen<Converter>? converters = null, [CallerFilePath] string file = "", [CallerMemberName] string name = "")
    {
        int checkedCount = 0;
        (converters ?? OutputNetworks.Plain).Holds(
            converter =>
            {
                if (converter.FurtherOutputs.Count > 0 && ModeAnalysis.Try(converter, converter.Modes[0]).Analysis is { } analysis)
                {
                    checkedCount++;
                    law(analysis);
                }
            },
            count,
            c => ScNet.Netlists.NetlistWriter.ToToml(c),
            file: file,
            name: name);
        Assert.True(LawCheck.IsOneCase || checkedCount > count / 16, $"Only {checkedCount} had a result.");
    }
}
