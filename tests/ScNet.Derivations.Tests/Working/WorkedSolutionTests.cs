using ScNet.Derivations.Working;
using ScNet.Netlists;
using ScNet.Topologies;

namespace ScNet.Derivations.Tests.Working;

public sealed class WorkedSolutionTests
{
    public static TheoryData<string, string> FilesAndCultures
    {
        get
        {
            TheoryData<string, string> data = [];
            foreach (string file in new[] { "series-parallel-3", "three-phase-4" })
            {
                foreach (string culture in new[] { "", "de-DE", "ar-SA", "fa-IR", "tr-TR", "sv-SE" })
                {
                    data.Add(file, culture);
                }
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(FilesAndCultures))]
    public void The_worked_examples_come_out_the_same_to_the_byte_in_every_culture(string file, string culture)
    {
        using CultureScope scope = new(culture);
        Converter converter = NetlistReader.ReadFile(RepositoryFiles.PathOf("docs", "examples", file + ".toml")).GetConverter();
        WorkedSolution solution = WorkedSolution.Of(converter, converter.Modes[0]);
        GoldenFile.Is(solution.ToMarkdown(), "docs", "examples", "worked", file + ".md");
        GoldenFile.Is(solution.ToLatex(), "docs", "examples", "worked", file + ".tex");
    }

    [Theory]
    [InlineData("")]
    [InlineData("de-DE")]
    [InlineData("fa-IR")]
    public void Names_with_any_character_and_values_that_decide_come_out_the_same_in_every_culture(string culture)
    {
        using CultureScope scope = new(culture);
        WorkedSolution solution = Work(Odd());
        GoldenFile.Is(solution.ToMarkdown(), "tests", "ScNet.Derivations.Tests", "Working", "odd-names.md");
        GoldenFile.Is(solution.ToLatex(), "tests", "ScNet.Derivations.Tests", "Working", "odd-names.tex");
    }

    [Fact]
    public void A_current_load_ties_its_loops_by_the_shares_of_the_phases()
    {
        string text = Work(Converter.Create("half").Input("vin").Output("vout", LoadKind.Current).Duties(0.25, 0.75)
            .Capacitor("fly", "p", "n").Capacitor("out", "vout", "gnd")
            .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1)
            .Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2)).ToMarkdown();
        Assert.Contains("| load current | 2 | 0 | closes loop 3 |", text, StringComparison.Ordinal);
        Assert.Contains("loop 3  -v_out + φ_vout[1] = 0\n", text, StringComparison.Ordinal);
        Assert.Contains("proportion of the phases, 1 : 3, and", text, StringComparison.Ordinal);
        Assert.Contains("(3)  -3·v_fly - v_out + 4·V_out = 0\n", text, StringComparison.Ordinal);
        Assert.Contains("c_3 = 1/4     share of phase 1\n", text, StringComparison.Ordinal);
        Assert.Contains("| `out` | 1/4 | -1/4 |", text, StringComparison.Ordinal);
        Assert.Contains("cut of out in phase 1\n", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_loop_that_repeats_what_another_phase_says_is_set_aside_and_named()
    {
        string text = Work(Converter.Create("set aside").Input("vin").Output("vout")
            .Capacitor("fly", "p", "n").Capacitor("hold", "vin", "vout")
            .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1)
            .Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2)).ToMarkdown();
        Assert.Contains("Set aside: `v_hold + V_out - V_in` = 0 repeats what phase 1 says. Capacitor `hold` meets the sources only", text, StringComparison.Ordinal);
        Assert.Contains("| `hold` | 1 | 2 | closes a loop that is set aside |", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_short_is_shown_with_its_network_and_no_equations()
    {
        WorkedSolution solution = Work(Converter.Create("short").Input("vin").Output("vout")
            .Switch("s1", "vin", "gnd", on: 1).Switch("s2", "vin", "vout", on: 2));
        Assert.False(solution.HasResult);
        string text = solution.ToMarkdown();
        Assert.Contains("| 0 | `gnd`, `vin` | reference |", text, StringComparison.Ordinal);
        Assert.DoesNotContain("voltage law", text, StringComparison.Ordinal);
        Fails(text, "In phase 1 the closed switch s1 connects the input 'vin' to 'gnd'.");
    }

    [Fact]
    public void A_contradiction_is_shown_with_the_combination_of_loops_that_leads_to_it()
    {
        string text = Work(Converter.Create("conflict").Input("vin").Output("vout")
            .Capacitor("a", "p", "gnd").Capacitor("b", "p", "gnd")
            .Switch("s1", "vin", "p", on: 1).Switch("s2", "p", "q", on: 2).Switch("s3", "p", "vout", on: 2).Switch("s4", "vin", "vout", on: 3).Switch("s5", "q", "vout", on: 2)
            .Switch("s6", "p", "gnd", on: 3).Phases(3)).ToMarkdown();
        Assert.Contains("These combinations say that `V_in` is zero, which it is not", text, StringComparison.Ordinal);
        Assert.Matches(@"\n-?V_in = 0 +=", text);
        Fails(text, "voltage");
    }

    [Fact]
    public void An_output_that_nothing_balances_is_shown_with_what_moves_with_it()
    {
        string text = Work(Converter.Create("unbalanced").Input("vin").Output("vout")
            .Capacitor("fly", "vin", "vout").Switch("s1", "vin", "x", on: 1)).ToMarkdown();
        Assert.Contains("No row is left for `V_out`: it can move by 1 together with `v_fly` by -1, and every equation still holds.", text, StringComparison.Ordinal);
        Fails(text, "No flow delivers charge to the output");
    }

    [Fact]
    public void A_ratio_of_zero_is_shown_up_to_its_last_row()
    {
        string text = Work(Converter.Create("zero").Input("vin").Output("vout")
            .Capacitor("a", "vout", "x")
            .Switch("s1", "x", "gnd", on: 1).Switch("s2", "x", "vout", on: 2).Switch("s3", "vin", "y", on: 1)).ToMarkdown();
        Assert.Contains("V_out = 0\n", text, StringComparison.Ordinal);
        Fails(text, "zero volts");
    }

    [Fact]
    public void A_load_current_without_a_path_is_shown_in_its_phase()
    {
        string text = Work(Converter.Create("interrupted").Input("vin").Output("vout", LoadKind.Current)
            .Capacitor("c", "x", "gnd").Switch("s1", "vin", "x", on: 1).Switch("s2", "x", "vout", on: 2)).ToMarkdown();
        Assert.Contains("| load current | 2 | 0 | has no path |", text, StringComparison.Ordinal);
        Fails(text, "the load current has no path");
    }

    [Fact]
    public void Oddities_of_a_sound_mode_are_remarks()
    {
        string text = Work(Converter.Create("idle").Input("vin").Output("vout")
            .Capacitor("fly", "p", "n").Capacitor("idle", "x", "y")
            .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1)
            .Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2)).ToMarkdown();
        Assert.Contains("Nothing fixes the voltages of `idle`.", text, StringComparison.Ordinal);
        Assert.Contains("## Remarks", text, StringComparison.Ordinal);
        Assert.Contains("| floats |", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_mode_of_another_converter_is_refused()
    {
        Converter one = SeriesParallel.StepDown(2), other = SeriesParallel.StepDown(3);
        Assert.Throws<ArgumentException>(() => WorkedSolution.Of(one, other.Modes[0]));
    }

    [Fact]
    public void The_solution_knows_converter_and_mode()
    {
        Converter converter = SeriesParallel.StepDown(2);
        WorkedSolution solution = WorkedSolution.Of(converter, converter.Modes[0]);
        Assert.True(solution.HasResult);
        Assert.Same(converter, solution.Converter);
        Assert.Same(converter.Modes[0], solution.Mode);
        Assert.Equal($"worked solution of {converter.Name}, mode default", solution.ToString());
    }

    [Fact]
    public void A_converter_with_inductors_has_no_worked_solution_and_no_check()
    {
        Converter stage = InductiveStage.StepDown(new(1, 3));
        ScNetException worked = Assert.Throws<ScNetException>(() => WorkedSolution.Of(stage, stage.Modes[0]));
        ScNetException check = Assert.Throws<ScNetException>(() => Derivation.Of(stage));
        Assert.All([worked, check], e => Assert.Equal(DiagnosticCodes.InductorsUnsupported, Assert.Single(e.Diagnostics).Code));
    }

    private static void Fails(string text, string reason)
    {
        string end = text[text.IndexOf("## Where it fails", StringComparison.Ordinal)..];
        Assert.Contains(reason, end, StringComparison.Ordinal);
        Assert.DoesNotContain("## Charges", text, StringComparison.Ordinal);
    }

    private static WorkedSolution Work(ConverterBuilder builder)
    {
        Converter converter = builder.Build();
        return WorkedSolution.Of(converter, converter.Modes[0]);
    }

    // Two flying capacitors side by side, and two switches side by side: values decide both.
    private static ConverterBuilder Odd() => Converter.Create("odd # names: 100 % | \"x\" & <b>").Input("v_in").Output("v~out")
        .Duties(0.3, 0.7)
        .Capacitor("a|b", "p^1", "n\\2", 1e-9, 0.01).Capacitor("{c} $d$ ``é", "p^1", "n\\2", 2e-9)
        .Switch("s1 --", "v_in", "p^1", 1, ohms: 2).Switch("[s2]", "n\\2", "v~out", 1, ohms: 3).Switch("*s2*", "n\\2", "v~out", 1, ohms: 4)
        .Switch("s3\n", "p^1", "v~out", 2).Switch("'s4'", "n\\2", "gnd", 2);
}
