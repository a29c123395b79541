using System.Globalization;
using Fractions;
using ScNet.Analysis;
using ScNet.SteadyState;
using ScNet.Topologies;
using Tomlyn;
using Tomlyn.Model;

namespace ScNet.Tests.Certified;

/// <summary>Holds the library to every figure of certified.toml, each with its source and tolerance beside it.</summary>
public sealed class CertifiedDataTests
{
    private const double Farads = 2e-9;
    private const double Ohms = 3;

    private static readonly TomlTable s_data = TomlSerializer.Deserialize<TomlTable>(
        File.ReadAllText(RepositoryFiles.PathOf("tests", "ScNet.Tests", "Certified", "certified.toml")))!;

    public static TheoryData<string, int> Families
    {
        get
        {
            TheoryData<string, int> cases = [];
            foreach (TomlTable family in Tables(s_data, "family"))
            {
                foreach (TomlTable member in Tables(family, "members"))
                {
                    cases.Add((string)family["name"], (int)(long)member["size"]);
                }
            }

            return cases;
        }
    }

    public static TheoryData<int, int> Bounds
    {
        get
        {
            TheoryData<int, int> cases = [];
            foreach (TomlTable member in Tables((TomlTable)s_data["bound"], "members"))
            {
                cases.Add((int)(long)member["capacitors"], (int)(long)member["largest"]);
            }

            return cases;
        }
    }

    public static TheoryData<double, string> Dividers
    {
        get
        {
            TheoryData<double, string> cases = [];
            foreach (TomlTable member in Tables((TomlTable)s_data["divider"], "members"))
            {
                cases.Add(Convert.ToDouble(member["x"], CultureInfo.InvariantCulture), (string)member["value"]);
            }

            return cases;
        }
    }

    [Fact]
    public void Every_table_names_its_source_and_its_tolerance() => Assert.All(
        [.. Tables(s_data, "family"), (TomlTable)s_data["bound"], (TomlTable)s_data["divider"]],
        table =>
        {
            Assert.NotEmpty((string)table["source"]);
            Assert.NotNull(table["tolerance"]);
            Assert.NotEmpty(Tables(table, "members"));
        });

    [Theory]
    [MemberData(nameof(Families))]
    public void A_family_has_the_certified_figures_down_and_up(string family, int size)
    {
        TomlTable member = Tables(Tables(s_data, "family").Single(f => (string)f["name"] == family), "members").Single(m => (long)m["size"] == size);
        Fraction ratio = Exact(member, "ratio");
        (Func<int, double, double, LoadKind, Converter> down, Func<int, double, double, LoadKind, Converter> up) = Builders(family);
        Hold(ModeAnalysis.Of(down(size, Farads, Ohms, LoadKind.Stiff)), ratio, 1, 1);

        // backwards, per unit at the other port: voltages times n, resistances times n²
        Hold(ModeAnalysis.Of(up(size, Farads, Ohms, LoadKind.Stiff)), 1 / ratio, 1 / ratio, 1 / (ratio * ratio));

        void Hold(ModeAnalysis analysis, Fraction expectedRatio, Fraction voltage, Fraction limit)
        {
            Assert.Equal(Quantity.Exact(expectedRatio), analysis.Ratio);
            Assert.Equal(Exact(member, "slow") * limit, Sum(analysis.SlowSwitchingLimit.Coefficients));
            Assert.Equal(Exact(member, "fast") * limit, Sum(analysis.FastSwitchingLimit.SwitchCoefficients));
            Assert.Equal(Exact(member, "capacitor") * voltage, Largest(analysis.IdealPoint.CapacitorVoltages));
            if (member.ContainsKey("switch"))
            {
                Assert.Equal(Exact(member, "switch") * voltage, Largest(analysis.BlockingVoltages.Peaks));
            }
        }
    }

    [Theory]
    [MemberData(nameof(Bounds))]
    public void The_Fibonacci_family_reaches_the_certified_bound(int capacitors, int largest) =>
        Assert.Equal(Quantity.Exact(largest), ModeAnalysis.Of(Fibonacci.StepUp(capacitors - 1)).Ratio);

    [Theory]
    [MemberData(nameof(Dividers))]
    public void The_exact_impedance_of_a_divider_has_the_certified_digits(double x, string value)
    {
        double tolerance = Convert.ToDouble(((TomlTable)s_data["divider"])["tolerance"], CultureInfo.InvariantCulture);
        double expected = 2 * Ohms * double.Parse(value, CultureInfo.InvariantCulture);

        // the divider has two switches in each loop
        OutputImpedance impedance = OutputImpedance.Of(ModeAnalysis.Of(SeriesParallel.StepDown(2, Farads, Ohms)));
        Assert.Equal(expected, impedance.Ohms(1 / (4 * x * 2 * Ohms * Farads)), tolerance * expected);
    }

    private static IEnumerable<TomlTable> Tables(TomlTable table, string key) => ((System.Collections.IEnumerable)table[key]).Cast<TomlTable>();

    private static Fraction Exact(TomlTable member, string key) => Fraction.FromString((string)member[key], CultureInfo.InvariantCulture);

    private static Fraction Sum(IEnumerable<Quantity> values) => values.Aggregate(Fraction.Zero, (sum, value) => sum + value.ToFraction());

    private static Fraction Largest(IEnumerable<Quantity> values) => values.Max(v => v.ToFraction().Abs());

    private static (Func<int, double, double, LoadKind, Converter> Down, Func<int, double, double, LoadKind, Converter> Up) Builders(string family) => family switch
    {
        "series-parallel" => (SeriesParallel.StepDown, SeriesParallel.StepUp),
        "ladder" => (Ladder.StepDown, Ladder.StepUp),
        "dickson" => (Dickson.StepDown, Dickson.StepUp),
        "doubler" => (Doubler.StepDown, Doubler.StepUp),
        "fibonacci" => (Fibonacci.StepDown, Fibonacci.StepUp),
        _ => throw new ArgumentOutOfRangeException(nameof(family), family, "Expected a family of the catalogue."),
    };
}
