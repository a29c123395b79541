using ScNet.Derivations.Documents;
using ScNet.Topologies;

namespace ScNet.Derivations.Tests.Documents;

public sealed class DerivationReaderTests : IDisposable
{
    private const string Head = "format = 1\n";

    private static readonly Converter s_third = SeriesParallel.StepDown(3);

    private readonly string _folder = Directory.CreateTempSubdirectory("scnet-tests-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Every_key_states_what_the_method_of_the_same_meaning_states()
    {
        const string Text = Head + """
            tolerance = 1e-3
            ratio = "1/3"
            input_charge = ["1/3", 0]
            output_charge = { 2 = "2/3" }

            [charges]
            fly1 = ["1/3", "-1/3"]
            top1 = { 2 = "1/3" }

            [voltages]
            fly2 = "?"

            [blocking]
            top1 = ["2/3", 0]

            [peak_blocking]
            top1 = "2/3"

            [slow_coefficients]
            fly1 = "1/9"

            [fast_coefficients]
            top1 = 0.2222
            fly1 = "4/9"

            [formulas]
            output_voltage = "V_in/3"
            slow_switching_limit = "2/(9*C*f)"
            fast_switching_limit = "14/9*R"
            slow_switching_loss = "2*I_out^2/(9*C*f)"
            fast_switching_loss = "14/9*I_out^2*R"
            """;
        Derivation stated = Derivation.Of(s_third).WithTolerance(1e-3)
            .Ratio("1/3").Input("1/3", 0).OutputInPhase(2, "2/3")
            .Capacitor("fly1", "1/3", "-1/3").SwitchInPhase("top1", 2, "1/3")
            .CapacitorVoltage("fly2", "?")
            .Blocking("top1", "2/3", 0).PeakBlocking("top1", "2/3")
            .SlowCoefficient("fly1", "1/9").FastCoefficient("top1", 0.2222).FastCoefficient("fly1", "4/9")
            .OutputVoltage("V_in/3").SlowSwitchingLimit("2/(9*C*f)").FastSwitchingLimit("14/9*R")
            .SlowSwitchingLoss("2*I_out^2/(9*C*f)").FastSwitchingLoss("14/9*I_out^2*R");
        DerivationReading reading = DerivationReader.Read(Text, s_third);
        Assert.Empty(reading.Diagnostics);
        Assert.Equal(stated.Statements, reading.GetDerivation().Statements);
        Assert.Equal(stated.Forms, reading.GetDerivation().Forms);
        Assert.Equal(1e-3, reading.GetDerivation().Tolerance);
    }

    // a ladder of three rungs divides by three: the number of cells, M. D. Seeman, thesis, UC Berkeley 2009, chapter 2 (from memory)
    [Theory]
    [InlineData("ladder 3", "1/3", true)]
    [InlineData("ladder 3", "1/2", false)]
    [InlineData("ladder 3 --step-up", "3", true)]
    public void A_family_stands_for_its_netlist(string family, string ratio, bool isRight)
    {
        string path = Path.Combine(_folder, "family.toml");
        File.WriteAllText(path, $"{Head}family = \"{family}\"\nratio = \"{ratio}\"\n");
        Assert.Equal(isRight, DerivationReader.ReadFile(path).GetDerivation().Check().IsRight);
    }

    [Theory]
    [InlineData("family = \"stairs 3\"\n", "There is no family 'stairs'. There are ")]
    [InlineData("family = \"ladder 1\"\n", "Expected 'ladder N' with whole numbers N from 2")]
    [InlineData("netlist = \"a.toml\"\nfamily = \"ladder 3\"\n", "Expected 'netlist' or 'family', but got both.")]
    public void A_family_that_is_none_is_reported_where_it_stands(string lines, string message)
    {
        string path = Path.Combine(_folder, "none.toml");
        File.WriteAllText(path, $"{Head}{lines}ratio = 1\n");
        Diagnostic found = DerivationReader.ReadFile(path).Diagnostics.First(d => d.Code == DiagnosticCodes.WrongValue);
        Assert.StartsWith(message, found.Message, StringComparison.Ordinal);
        Assert.Equal(1 + lines.Count(c => c == '\n'), found.Position!.Value.Line);
    }

    [Fact]
    public void The_netlist_is_found_from_the_folder_of_the_document()
    {
        Directory.CreateDirectory(Path.Combine(_folder, "below"));
        File.WriteAllText(Path.Combine(_folder, "third.toml"), ScNet.Netlists.NetlistWriter.ToToml(s_third));
        string path = Path.Combine(_folder, "below", "mine.toml");
        File.WriteAllText(path, Head + "netlist = \"../third.toml\"\nratio = \"1/3\"\n");
        Assert.True(DerivationReader.ReadFile(path).GetDerivation().Check().IsRight);
    }

    [Fact]
    public void The_example_of_the_guide_is_the_file_that_it_names()
    {
        string file = File.ReadAllText(RepositoryFiles.PathOf("docs", "examples", "derivations", "series-parallel-3.toml")).ReplaceLineEndings("\n");
        string page = File.ReadAllText(RepositoryFiles.PathOf("docs", "guide", "derivation-document.md")).ReplaceLineEndings("\n");
        string example = page.Split("```toml derivation\n")[1].Split("```")[0];
        Assert.Equal(file[file.IndexOf("format", StringComparison.Ordinal)..], example);
    }

    [Fact]
    public void A_mode_is_named_where_there_are_several()
    {
        Converter gears = RecursiveCascade.Reconfigurable(2);
        Assert.Equal("1/4", DerivationReader.Read(Head + "mode = \"1/4\"\nratio = \"1/4\"\n", gears).GetDerivation().Mode.Name);
        Assert.Contains("has no mode '1/3'", Only(Head + "mode = \"1/3\"\nratio = 1\n", gears).Message, StringComparison.Ordinal);
        Assert.Equal(DiagnosticCodes.MissingKey, Only(Head + "ratio = 1\n", gears).Code);
    }

    [Fact]
    public void Phases_go_by_name_too()
    {
        Converter named = ScNet.Netlists.NetlistReader.ReadFile(RepositoryFiles.PathOf("docs", "examples", "series-parallel-3.toml")).GetConverter();
        Derivation derivation = DerivationReader.Read(Head + "[charges]\nfly1 = { deliver = \"-1/3\" }\n", named).GetDerivation();
        Assert.Equal((2, "-1/3"), (derivation.Statements[0].Phase, derivation.Statements[0].Value.ToString()));
    }

    [Theory]
    [InlineData("ratio = 1\n", "missing-key", 1, 1, "no key 'format'")]
    [InlineData("format = 2\nratio = 1\n", "value-out-of-range", 1, 10, "Expected version 1 of the format, but got 2.")]
    [InlineData("format = \"1\"\nratio = 1\n", "wrong-value", 1, 10, "Expected a whole number for 'format'")]
    [InlineData(Head, "missing-key", 1, 1, "states nothing")]
    [InlineData(Head + "ratoi = 1\nratio = 1\n", "unknown-key", 2, 1, "Did you mean 'ratio'?")]
    [InlineData(Head + "ratio = \"a third\"\n", "wrong-value", 2, 9, "Expected a number, a fraction such as \"1/3\", or \"?\" for the ratio, but got the string \"a third\".")]
    [InlineData(Head + "ratio = inf\n", "wrong-value", 2, 9, "for the ratio")]
    [InlineData(Head + "ratio = [1]\n", "wrong-value", 2, 9, "but got an array")]
    [InlineData(Head + "tolerance = 1\nratio = 1\n", "value-out-of-range", 2, 13, "from 0 to below 1")]
    [InlineData(Head + "input_charge = [1]\n", "wrong-value", 2, 16, "Expected 2 values for the input charge, one for each phase, but got 1.")]
    [InlineData(Head + "input_charge = 1\n", "wrong-value", 2, 16, "an array with one value for each of the 2 phases")]
    [InlineData(Head + "[charges]\nfly3 = [1, 2]\n", "wrong-value", 3, 1, "There is no capacitor or switch 'fly3' for [charges].")]
    [InlineData(Head + "[charges]\nfly1 = { 3 = 1 }\n", "unknown-phase", 3, 10, "There is no phase '3' for the charge of 'fly1'. The phases are 1, 2.")]
    [InlineData(Head + "[charges]\nfly1 = [1, true]\n", "wrong-value", 3, 12, "the charge of 'fly1' in phase 2, but got true")]
    [InlineData(Head + "[voltages]\ntop1 = 1\n", "wrong-value", 3, 1, "There is no capacitor 'top1' for [voltages].")]
    [InlineData(Head + "[blocking]\nfly1 = [1, 1]\n", "wrong-value", 3, 1, "There is no switch 'fly1' for [blocking].")]
    [InlineData(Head + "[slow_coefficients]\nfly1 = 1e300\n", "value-out-of-range", 3, 8, "1e100 at most")]
    [InlineData(Head + "voltages = 1\n", "wrong-value", 2, 12, "Expected a table [voltages]")]
    [InlineData(Head + "[formulas]\nslow_switching_limit = \"1/(C_x*f)\"\n", "wrong-value", 3, 24, "'Series-parallel 3:1' has no capacitor 'x'.")]
    [InlineData(Head + "[formulas]\nfast_switching_limit = \"R +\"\n", "wrong-value", 3, 24, "Column 4: expected a number")]
    [InlineData(Head + "[formulas]\nssl = \"R\"\n", "unknown-key", 3, 1, "Did you mean 'slow_switching_limit'?")]
    [InlineData(Head + "ratio = 1\nratio = 2\n", "syntax", 3, 1, "ratio")]
    [InlineData(Head + "ratio = \n", "syntax", 2, 0, "")]
    public void A_mistake_is_told_with_its_place(string text, string code, int line, int column, string words)
    {
        Diagnostic error = Only(text, s_third);
        Assert.Equal((code, line), (error.Code, error.Position!.Value.Line));
        Assert.True(column == 0 || column == error.Position.Value.Column, $"column {error.Position.Value.Column}: {error}");
        Assert.Contains(words, error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void All_mistakes_are_told_at_once()
    {
        DerivationReading reading = DerivationReader.Read("format = \"3\"\nratio = true\n[charges]\nx = [1, 1]\nfly1 = [1]\n", s_third, "mine.toml");
        Assert.False(reading.HasResult);
        Assert.Equal(["mine.toml(1,10)", "mine.toml(2,9)", "mine.toml(4,1)", "mine.toml(5,8)"], reading.Diagnostics.Select(d => d.Position.ToString()));
        Assert.Equal(4, Assert.Throws<ScNetException>(reading.GetDerivation).Diagnostics.Count);
    }

    [Fact]
    public void Of_a_version_that_is_not_known_nothing_else_is_said()
    {
        Diagnostic only = Assert.Single(DerivationReader.Read("ratio = true\nformat = 2\nnew_key = 1\n", s_third).Diagnostics);
        Assert.Equal(
            (DiagnosticCodes.ValueOutOfRange, "Expected version 1 of the format, but got 2. Read it with the version of ScNet that it is written for."),
            (only.Code, only.Message));
    }

    [Theory]
    [InlineData("family = \"a\\nb\"\nratio = 1\n")]
    [InlineData("family = \"ladder\\n4 5\"\nratio = 1\n")]
    [InlineData("[formulas]\noutput_voltage = \"C_'a\\\\u000Ab'\"\n")]
    [InlineData("[charges]\nfly1 = { \"a\\nb\" = 1, \"1\" = \"x\\ny\" }\n\"x\\ny\" = 1\n")]
    public void A_name_does_not_break_the_line_of_a_message(string text)
    {
        DerivationReading reading = DerivationReader.Read(Head + text, s_third);
        Assert.NotEmpty(reading.Diagnostics);
        Assert.All(reading.Diagnostics, d => Assert.DoesNotContain('\n', d.ToString()));
    }

    [Fact]
    public void Many_unknown_names_of_many_elements_are_told_soon()
    {
        ConverterBuilder builder = Converter.Create("Large").Input("vin").Output("vout").Capacitor("fly", "p", "n").Switch("s1", "vin", "p", 1).Switch("s2", "n", "vout", 1);
        for (int i = 0; i < 2000; i++)
        {
            builder.Switch($"t{i}", "p", "vout", 2).Switch($"b{i}", "n", "gnd", 2);
        }

        string text = Head + "[charges]\n" + string.Concat(Enumerable.Range(0, 2000).Select(i => $"u{i} = 1\n"));
        Converter converter = builder.Build();
        DerivationReader.Read(text, converter);
        long allocated = GC.GetAllocatedBytesForCurrentThread();
        DerivationReading reading = DerivationReader.Read(text, converter);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - allocated, 0, 200_000_000);
        Assert.Equal(1001, reading.Diagnostics.Count);
    }

    [Theory]
    [InlineData("1.5\\u0000")]
    [InlineData("1/3\\u0000")]
    public void A_value_with_a_character_behind_its_end_is_no_value(string value)
    {
        Diagnostic only = Assert.Single(DerivationReader.Read($"{Head}ratio = \"{value}\"\n", s_third).Diagnostics);
        Assert.Equal((DiagnosticCodes.WrongValue, 2), (only.Code, only.Position!.Value.Line));
    }

    [Fact]
    public void The_mistakes_of_the_netlist_are_told_too()
    {
        File.WriteAllText(Path.Combine(_folder, "bad.toml"), "name = 1\n");
        string path = Path.Combine(_folder, "mine.toml");
        File.WriteAllText(path, Head + "netlist = \"bad.toml\"\nratio = 1\n");
        DerivationReading reading = DerivationReader.ReadFile(path);
        Assert.False(reading.HasResult);
        Assert.All(reading.Diagnostics, d => Assert.EndsWith("bad.toml", d.Position!.Value.File, StringComparison.Ordinal));
        Assert.Equal(DiagnosticCodes.FileUnreadable, Assert.Single(DerivationReader.ReadFile(Path.Combine(_folder, "missing.toml")).Diagnostics).Code);
        File.WriteAllText(path, Head + "ratio = 1\n");
        Assert.Contains("no key 'netlist'", Assert.Single(DerivationReader.ReadFile(path).Diagnostics).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_converter_with_inductors_is_refused_where_its_netlist_is_named()
    {
        Diagnostic error = Only(Head + "netlist = \"x.toml\"\nratio = 1\n", InductiveStage.StepDown(new(1, 3)));
        Assert.Equal((DiagnosticCodes.InductorsUnsupported, 2), (error.Code, error.Position!.Value.Line));
    }

    private static Diagnostic Only(string text, Converter converter)
    {
        DerivationReading reading = DerivationReader.Read(text, converter);
        Assert.False(reading.HasResult);
        return Assert.Single(reading.Diagnostics);
    }
}
