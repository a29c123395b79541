using ScNet.Analysis;
using ScNet.Results;
using ScNet.Topologies;

namespace ScNet.Derivations.Tests;

[Trait("Kind", "Law")]
public sealed class AnalysisDifferenceTests
{
    [Fact]
    public void A_snapshot_saved_and_read_back_is_the_same_value()
    {
        AnalysisSnapshot snapshot = AnalysisSnapshot.Of(Circuits.ThreePhases());
        string path = Path.Combine(Path.GetTempPath(), $"{Guid.NewGuid():N}.json");
        try
        {
            snapshot.Save(path);
            AnalysisSnapshot loaded = AnalysisSnapshot.Load(path);
            Assert.Equal(snapshot, loaded);
            Assert.Equal(snapshot.GetHashCode(), loaded.GetHashCode());
            Assert.Equal(snapshot.ToJson(), loaded.ToJson());
            Assert.True(AnalysisDifference.Between(snapshot, loaded, 0).IsEmpty);
        }
        finally
        {
            File.Delete(path);
        }
    }

    [Fact]
    public void Fractions_of_any_length_are_kept()
    {
        AnalysisSnapshot snapshot = AnalysisSnapshot.Of(Doubler.StepUp(400));
        Assert.Equal(Quantity.Exact(new Fractions.Fraction(System.Numerics.BigInteger.Pow(2, 400))), snapshot.Modes[0].Entries[0].Value);
        Assert.Equal(snapshot, AnalysisSnapshot.Parse(snapshot.ToJson()));
    }

    [Fact]
    public void A_snapshot_taken_from_an_analysis_is_the_one_that_its_document_reads_back_as() => RandomNetworks.Any.Holds(sketch =>
    {
        AnalysisSnapshot taken = AnalysisSnapshot.Of(sketch.Build());
        AnalysisSnapshot read = AnalysisSnapshot.Parse(taken.ToJson());
        Assert.Equal(taken.ToString(), read.ToString());
        Assert.Equal(taken, read);
    }, 300);

    [Fact]
    public void A_snapshot_costs_little_beside_its_analysis()
    {
        Converter ladder = Ladder.StepDown(20);
        ConverterAnalysis analysis = ConverterAnalysis.Of(ladder);
        AnalysisSnapshot.Of(analysis).ToJson();
        long whole = Allocations.Of(() => ConverterAnalysis.Of(ladder)), taken = Allocations.Of(() => AnalysisSnapshot.Of(analysis));
        Assert.InRange(taken, 1, whole);
    }

    [Fact]
    public void Every_value_of_the_document_is_in_the_snapshot()
    {
        Converter half = Circuits.Half();
        string json = AnalysisDocument.Of(ConverterAnalysis.Of(half)).WithOutputImpedance([1e6]).ToJson();
        AnalysisSnapshot snapshot = AnalysisSnapshot.Parse(json);
        Assert.Equal(36, snapshot.Modes[0].Entries.Count);
        Assert.Contains("default: ratio = 1/2 V/V", snapshot.ToString(), StringComparison.Ordinal);
        Assert.Contains("default: output impedance at 1000000 Hz = ", snapshot.ToString(), StringComparison.Ordinal);
        Assert.Equal("default: flow by topology", Assert.Single(snapshot.Modes).ToString());
    }

    [Fact]
    public void A_changed_capacitance_shows_in_the_elements_that_it_changes_with_amounts_and_units()
    {
        foreach (string culture in new[] { "", "de-DE", "ar-SA" })
        {
            using CultureScope scope = new(culture);
            AnalysisDifference difference = AnalysisDifference.Between(
                AnalysisSnapshot.Of(Circuits.Parallel()), AnalysisSnapshot.Of(Circuits.Parallel(farads: 2e-9)));
            Assert.Equal(
                """
                Parallel: 7 changes
                  mode default
                    charge of a in phase 1: 0.125 -> 0.2 (+0.075, +60 %)
                    charge of a in phase 2: -0.125 -> -0.2 (-0.075, -60 %)
                    charge of b in phase 1: 0.375 -> 0.3 (-0.075, -20 %)
                    charge of b in phase 2: -0.375 -> -0.3 (+0.075, +20 %)
                    slow coefficient of a: 0.015625 -> 0.04 (+0.024375, +156 %)
                    slow coefficient of b: 0.140625 -> 0.09 (-0.050625, -36 %)
                    slow-switching limit at 1 Hz: 62500000 Ω -> 50000000 Ω (-1.25E+07, -20 %)
                """,
                difference.ToString());
            Assert.Equal(["a", "a", "b", "b", "a", "b", null], difference.Changes.Select(c => c.Element));
        }
    }

    [Fact]
    public void Numbers_within_the_tolerance_are_equal_and_fractions_never_are_unless_they_are()
    {
        AnalysisSnapshot before = AnalysisSnapshot.Of(Circuits.Parallel()), after = AnalysisSnapshot.Of(Circuits.Parallel(farads: 1.0001e-9));
        Assert.NotEqual(before, after);
        Assert.False(AnalysisDifference.Between(before, after).IsEmpty);
        Assert.Equal("Parallel: no change", AnalysisDifference.Between(before, after, relativeTolerance: 1e-3).ToString());
        AnalysisSnapshot tampered = AnalysisSnapshot.Parse(before.ToJson().Replace("\"ratio\": \"1/2\"", "\"ratio\": \"500000001/1000000000\"", StringComparison.Ordinal));
        SnapshotChange change = Assert.Single(AnalysisDifference.Between(before, tampered, 0.5).Changes);
        Assert.Equal(Quantity.Exact(1, 1_000_000_000), change.Amount);
        Assert.Equal("ratio: 1/2 V/V -> 500000001/1000000000 V/V (+1/1000000000, 0 %)", change.ToString());
        Assert.Throws<ArgumentOutOfRangeException>(() => AnalysisDifference.Between(before, after, double.NaN));
    }

    [Fact]
    public void New_elements_and_modes_are_one_change_each()
    {
        AnalysisDifference difference = AnalysisDifference.Between(AnalysisSnapshot.Of(SeriesParallel.StepDown(2)), AnalysisSnapshot.Of(SeriesParallel.StepDown(3)));
        string[] lines = difference.ToString().Split('\n');
        Assert.Equal("  converter: Series-parallel 2:1 -> Series-parallel 3:1", lines[1]);
        Assert.Equal(["    fly2: new", "    series3: new", "    top2: new", "    bottom2: new", "    ratio: 1/2 V/V -> 1/3 V/V (-1/6, -33.333 %)"], lines[3..8]);
        Assert.Contains("    fly2: gone", AnalysisDifference.Between(AnalysisSnapshot.Of(SeriesParallel.StepDown(3)), AnalysisSnapshot.Of(SeriesParallel.StepDown(2))).ToString(), StringComparison.Ordinal);

        string json = AnalysisSnapshot.Of(Circuits.Half()).ToJson();
        AnalysisSnapshot renamed = AnalysisSnapshot.Parse(json.Replace("\"default\"", "\"night\"", StringComparison.Ordinal));
        Assert.Equal("Half: 2 changes\n  mode night\n    mode: new\n  mode default\n    mode: gone", AnalysisDifference.Between(AnalysisSnapshot.Parse(json), renamed).ToString());
    }

    [Fact]
    public void A_mode_that_loses_its_result_is_one_change()
    {
        AnalysisSnapshot broken = AnalysisSnapshot.Of(Circuits.WithoutResult());
        AnalysisSnapshot half = AnalysisSnapshot.Parse(AnalysisSnapshot.Of(Circuits.Half()).ToJson().Replace("\"Half\"", "\"Shorted\"", StringComparison.Ordinal));
        Assert.Equal("Shorted: 1 change\n  mode default\n    result: gone", AnalysisDifference.Between(half, broken).ToString());
        Assert.Equal("Shorted: 1 change\n  mode default\n    result: new", AnalysisDifference.Between(broken, half).ToString());
        Assert.True(AnalysisDifference.Between(broken, broken).IsEmpty);
    }

    [Fact]
    public void A_value_that_is_no_longer_determined_is_a_change()
    {
        AnalysisSnapshot before = AnalysisSnapshot.Of(Circuits.Half());
        AnalysisSnapshot after = AnalysisSnapshot.Parse(before.ToJson().Replace("\"fly\": \"1/2\"", "\"fly\": null", StringComparison.Ordinal));
        AnalysisDifference difference = AnalysisDifference.Between(before, after);
        Assert.Equal("voltage of fly: 1/2 V/V -> ?", Assert.Single(difference.Changes).ToString());
        Assert.Equal(difference, AnalysisDifference.Between(before, after));
        Assert.NotEqual(difference, AnalysisDifference.Between(after, before));
    }

    [Theory]
    [InlineData("", "syntax", 1, 1)]
    [InlineData("{\n\"converter\": }", "syntax", 2, 14)]
    [InlineData("{ \"converter\": \"ß\", \"modes\": }", "syntax", 1, 30)]
    [InlineData("{ \"converter\": \"\U0001F600\", \"modes\": }", "syntax", 1, 31)]
    [InlineData("{ \"converter\": \"a\",\n \"converter\": \"b\", \"modes\": [] }", "syntax", 2, 15)]
    [InlineData("{ \"converter\": \"\\ud800\" }", "syntax", 1, 16)]
    [InlineData("\n[]", "wrong-value", 2, 1)]
    [InlineData("{ \"converter\": null, \"modes\": [] }", "wrong-value", 1, 1)]
    [InlineData("{ \"ß\": 1,\n\"converter\": 3, \"modes\": [] }", "wrong-value", 2, 14)]
    [InlineData("{ \"converter\": \"ß\", \"modes\": [3] }", "wrong-value", 1, 31)]
    [InlineData("{ \"converter\": \"a\",\n\"modes\": [{ \"mode\": \"x\", \"status\": \"ok\" }] }", "wrong-value", 2, 11)]
    [InlineData("{ \"converter\": \"a\", \"modes\": [{ \"mode\": \"x\", \"status\": \"error\", \"ratio\": null },\n { \"mode\": \"x\", \"status\": \"error\" }] }", "wrong-value", 2, 2)]
    [InlineData("{ \"format\": 2, \"converter\": \"a\", \"modes\": [] }", "value-out-of-range", 1, 13)]
    [InlineData("{ \"format\": \"1\", \"converter\": \"a\", \"modes\": [] }", "wrong-value", 1, 13)]
    public void A_text_that_is_no_analysis_document_is_refused_with_its_place(string json, string code, int line, int column)
    {
        Diagnostic diagnostic = Assert.Single(Assert.Throws<ScNetException>(() => AnalysisSnapshot.Parse(json)).Diagnostics);
        Assert.Equal(code, diagnostic.Code);
        Assert.Equal(new SourcePosition(null, line, column), diagnostic.Position);
    }

    [Fact]
    public void What_is_no_JSON_is_told_on_one_line()
    {
        Diagnostic diagnostic = Assert.Single(Assert.Throws<ScNetException>(() => AnalysisSnapshot.Parse("[tl\"\n\"")).Diagnostics);
        Assert.DoesNotContain('\n', diagnostic.ToString());
        Assert.DoesNotContain("LineNumber", diagnostic.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Half_of_a_character_is_refused_with_its_place()
    {
        Diagnostic diagnostic = Assert.Single(Assert.Throws<ScNetException>(() => AnalysisSnapshot.Parse("{\n\"\uDC00")).Diagnostics);
        Assert.Equal((DiagnosticCodes.Syntax, new SourcePosition(null, 2, 2)), (diagnostic.Code, diagnostic.Position));
    }

    [Fact]
    public void A_version_of_the_format_that_is_not_known_is_told_with_what_to_do()
    {
        string json = AnalysisSnapshot.Of(Circuits.Half()).ToJson();
        Assert.True(AnalysisSnapshot.Parse(json.Insert(1, "\"format\": 1,")).Equals(AnalysisSnapshot.Parse(json)));
        Assert.Equal(
            "Expected version 1 of the format, but got 7. Read it with the version of ScNet that wrote it, or save the analysis anew.",
            Assert.Single(Assert.Throws<ScNetException>(() => AnalysisSnapshot.Parse(json.Insert(1, "\"format\": 7,"))).Diagnostics).Message);
    }

    [Fact]
    public void The_resistance_of_a_coil_is_in_the_snapshot_that_is_taken_as_in_the_one_that_is_read()
    {
        Converter buck = Converter.Create("Buck").Input("vin").Output("vout", LoadKind.Current)
            .Capacitor("out", "vout", "gnd").Inductor("coil", "x", "vout", 1e-6, 0.02).Switch("s1", "vin", "x", 1).Switch("s2", "x", "gnd", 2).Build();
        AnalysisSnapshot taken = AnalysisSnapshot.Of(buck), read = AnalysisSnapshot.Parse(taken.ToJson());
        Assert.Equal(taken.ToString(), read.ToString());
        Assert.Contains("fast coefficient of coil = 1", taken.ToString(), StringComparison.Ordinal);
        Assert.True(AnalysisDifference.Between(taken, read).IsEmpty);
    }

    [Theory]
    [InlineData("\"1/0\"")]
    [InlineData("true")]
    [InlineData("1e999")]
    public void A_value_that_is_none_is_refused(string value)
    {
        string json = AnalysisSnapshot.Of(Circuits.Half()).ToJson().Replace("\"ratio\": \"1/2\"", $"\"ratio\": {value}", StringComparison.Ordinal);
        Assert.Equal(DiagnosticCodes.WrongValue, Assert.Single(Assert.Throws<ScNetException>(() => AnalysisSnapshot.Parse(json)).Diagnostics).Code);
    }
}
