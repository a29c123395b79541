using CsCheck;
using ScNet.Design.Requirements;
using ScNet.Devices;

namespace ScNet.Tests.Design.Requirements;

/// <summary>What the writer writes, the reader reads as an equal requirement.</summary>
[Trait("Kind", "Law")]
public sealed class RequirementWriterLaws
{
    private static readonly Gen<double> s_positive = Gen.Double[-15, 6].Select(e => Math.Pow(10, e));

    private static readonly Gen<double> s_zeroOrMore = Gen.OneOf(Gen.Const(0.0), s_positive);

    private static readonly Gen<double?> s_optional = Gen.OneOf(Gen.Const((double?)null), s_positive.Select(v => (double?)v));

    private static readonly Gen<string> s_name = Gen.OneOf(Gen.OneOf("a", "n 1.8 V", "1/2", "a.b", "\"", "\\", "\t", "ß", "\uD83D\uDE00", "="), Gen.String[Gen.Char['\0', '\uD7FF'], 1, 6]);

    private static readonly Gen<SwitchDevice> s_switch =
        from texts in Gen.Select(s_name, Gen.Bool)
        from v in s_positive.Array[9]
        from z in s_zeroOrMore.Array[3]
        from threshold in Gen.Double[0, 0.9]
        select new SwitchDevice
        {
            Name = "?",
            Source = texts.Item1,
            Polarity = texts.Item2 ? DevicePolarity.PType : DevicePolarity.NType,
            RatedVolts = v[0],
            GateDriveVolts = v[1],
            GateRatedVolts = v[1] + v[2],
            ThresholdVolts = v[1] * threshold < Math.Pow(10, -16) ? 0 : v[1] * threshold,
            OnResistanceOhmMicrometres = v[3],
            GateChargeCoulombsPerMicrometre = v[4],
            JunctionChargeCoulombsPerMicrometre = v[5],
            AreaSquareMetresPerMicrometre = v[6],
            StackAreaFactor = v[7],
            BodyDiodeVolts = v[8],
            LeakageAmperesPerMicrometre = z[0],
            GuardMetres = z[1],
            RecoveryCoulombsPerMicrometre = z[2],
        };

    private static readonly Gen<CapacitorDevice> s_capacitor =
        from source in s_name
        from v in s_positive.Array[3]
        from z in s_zeroOrMore.Array[5]
        from density in Gen.OneOf(Gen.Const(Array.Empty<double>()), s_positive.Array[2, 5])
        select new CapacitorDevice
        {
            Name = "?",
            Source = source,
            RatedVolts = v[0],
            FaradsPerSquareMetre = v[1],
            DensityAgainstBias = [.. density.Select((d, i) => new DensityPoint(i - 0.7, d))],
            StackAreaFactor = v[2],
            BottomPlateFraction = z[0],
            TopPlateFraction = z[1],
            EsrOhmSquareMetres = z[2],
            LeakageAmperesPerSquareMetre = z[3],
            GuardMetres = z[4],
        };

    private static readonly Gen<Process> s_process =
        from names in s_name.Array[2]
        from switches in s_switch.Array[1, 3]
        from capacitors in s_capacitor.Array[1, 3]
        from inductors in Gen.Select(s_positive, s_zeroOrMore, s_optional).Array[0, 2]
        from counts in Gen.Int[1, 9].Array[2]
        from shares in Gen.Double[0.01, 1]
        from z in s_zeroOrMore.Array[4]
        from corners in Gen.Select(s_positive, s_positive).Array[0, 2]
        select new Process
        {
            Name = names[0],
            Switches = [.. switches.Select((s, i) => s with { Name = names[1] + i })],
            Capacitors = [.. capacitors.Select((c, i) => c with { Name = names[1] + i })],
            Inductors = [.. inductors.Select((l, i) => new InductorDevice
            {
                Name = names[1] + i,
                Source = names[0],
                Henries = l.Item1,
                Ohms = l.Item2,
                AreaSquareMetres = l.Item2,
                MaximumAmperes = l.Item3,
                CoreWatts = l.Item2,
                CoreFrequencyExponent = 2 * l.Item1,
                CoreRippleExponent = 3 * l.Item1,
            })],
            MaximumSwitchesInSeries = counts[0],
            MaximumCapacitorsInSeries = counts[1],
            GateRailEfficiency = shares,
            WiringOhms = z[0],
            DeadTimeSeconds = z[3],
            Control = new ControlOverhead { FixedWatts = z[1], CoulombsPerCycle = z[2] },
            Corners = [.. corners.Select((c, i) => new Corner(names[1] + i, c.Item1, c.Item2))],
        };

    private static readonly Gen<CandidateRequest> s_candidate = Gen.OneOf(
        s_name.Select(f => new CandidateRequest { File = f }),
        from families in s_name.Array[1, 3]
        from sizes in Gen.Select(Gen.Int[0, 5], Gen.Int[0, 5])
        from gears in Gen.Bool
        from ratios in Gen.Select(Gen.Int[-9, -1], Gen.Int[1, 9], (p, q) => new Fractions.Fraction(p, q)).Array[0, 3]
        select new CandidateRequest { Families = families, Sizes = sizes.Item1 == 0 ? default : new Interval<int>(sizes.Item1, sizes.Item1 + sizes.Item2), Ratios = ratios, AreGears = gears });

    private static readonly Gen<Requirement> s_requirements =
        from name in s_name
        from process in s_process
        from candidates in s_candidate.Array[0, 3]
        from ends in s_positive.Array[8]
        from optional in s_optional.Array[3]
        from kinds in Gen.Bool.Array[4]
        from outputs in s_positive.Array[1, 4]
        from loads in Gen.Select(s_positive, Gen.Int[1, 9], Gen.Bool).Array[1, 4]
        select Build(name, process, candidates, ends, optional, kinds, outputs, loads);

    [Fact]
    public void A_document_that_is_written_reads_as_an_equal_requirement() => s_requirements.Holds(
        requirement =>
        {
            string text = RequirementWriter.ToToml(requirement);
            RequirementReading reading = RequirementReader.Read(text);
            Assert.True(reading.HasResult, $"{string.Join('\n', reading.Diagnostics)}\n{text}");
            Assert.Equal(RequirementDocuments.Describe(requirement), RequirementDocuments.Describe(reading.Requirement));
            Assert.Equal(text, RequirementWriter.ToToml(reading.Requirement));
            Assert.True(RequirementSchemaTests.IsValid(text), text);
        },
        count: 100);

    [Fact]
    public void The_example_reads_back_as_it_is()
    {
        Requirement example = RequirementReader.ReadFile(RepositoryFiles.PathOf("docs", "examples", "core-requirement.toml")).GetRequirement();
        Assert.Equal(RequirementDocuments.Describe(example), RequirementDocuments.Describe(RequirementReader.Read(RequirementWriter.ToToml(example)).Requirement));
    }

    [Theory]
    [InlineData("name = \"Small\"", "name = \"Other\"")]
    [InlineData("[0.4, 3.6]", "[0.4, 3.5]")]
    [InlineData("output_volts = 1.0", "output_volts = 0.8")]
    [InlineData("output_volts = [", "output_range_volts = [")]
    [InlineData("[1.8, 8e-3]", "[1.8, 7e-3]")]
    [InlineData("fixed_watts", "coulombs_per_cycle")]
    [InlineData("sizes = [2, 4]", "sizes = [2, 5]")]
    [InlineData("threshold_factor = 1.2", "threshold_factor = 1.1")]
    public void The_comparison_of_requirements_sees_every_difference(string old, string replacement) => Assert.NotEqual(
        RequirementDocuments.Describe(RequirementReader.Read(RequirementDocuments.Small).GetRequirement()),
        RequirementDocuments.Describe(RequirementReader.Read(RequirementDocuments.With(old, replacement)).GetRequirement()));

    [Fact]
    public void The_text_is_the_same_in_every_culture()
    {
        Requirement small = RequirementReader.Read(RequirementDocuments.Small).GetRequirement();
        string text = RequirementWriter.ToToml(small);
        using (new CultureScope("de-DE"))
        {
            Assert.Equal(text, RequirementWriter.ToToml(small));
        }
    }

    private static Requirement Build(
        string name, Process process, CandidateRequest[] candidates, double[] ends, double?[] optional, bool[] kinds, double[] outputs, (double Amperes, int Weight, bool Fixed)[] loads)
    {
        double[] volts = [.. outputs.Order().Distinct()];
        bool isRange = kinds[0] && volts.Length == 2;
        double weight = loads.Sum(l => l.Weight);
        Interval<double> input = Range(ends[0], ends[1]);
        return new Requirement
        {
            Name = name,
            Candidates = candidates,
            Discharge = kinds[1] ? [new DischargePoint(0.9, input.Maximum!.Value), new(0.1, input.Minimum!.Value)] : [],
            InputVolts = input,
            CellCoulombs = optional[0],
            SourceOhms = optional[1] ?? 0,
            Loads = [.. loads.Select((l, i) => new LoadShare(name + i, l.Amperes, l.Weight / weight, l.Fixed ? volts[0] : null))],
            LoadRangeAmperes = kinds[2] ? Range(loads.Min(l => l.Amperes), loads.Max(l => l.Amperes)) : default,
            OutputVolts = volts,
            OutputIsRange = isRange,
            RippleVolts = optional[2],
            OutputFarads = optional[2] / 3 ?? 0,
            Process = process,
            AreaSquareMetres = kinds[3] ? ends[2] + ends[3] : null,
            CapacitorAreaSquareMetres = ends[2],
            SwitchAreaSquareMetres = kinds[3] ? null : ends[3],
            FrequencyHz = Range(ends[4], ends[5]),
        };
    }

    private static Interval<double> Range(double a, double b) => new(Math.Min(a, b), Math.Max(a, b));
}
