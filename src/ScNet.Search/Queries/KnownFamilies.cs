using System.Collections.Concurrent;
using System.Globalization;
using Fractions;
using ScNet.Search.LoopSpaces;
using ScNet.Topologies;

namespace ScNet.Search.Queries;

/// <summary>The standard families of two and three phases with so many flying capacitors, by what their phases do.</summary>
/// <remarks>
/// A member is told by the form of its loops in both phases, whatever it is called, and so are capacitors that rest on a rail.
/// Families with dependent loops are found by no network of the atlas, as that holds none.
/// </remarks>
internal sealed class KnownFamilies
{
    private static readonly ConcurrentDictionary<int, KnownFamilies> s_known = new();

    private readonly Dictionary<string, List<string>> _names = [];
    private readonly Dictionary<(int Phases, Fraction Ratio, NetworkMeasures Measures), SearchedNetwork> _networks = [];

    private KnownFamilies(int capacitors)
    {
        foreach (Family family in FamilyCatalogue.All)
        {
            foreach (int[] numbers in Numbers(family, capacitors))
            {
                Add(family, numbers, isStepUp: false, capacitors);
                if (family.StepUpRatio is not null)
                {
                    Add(family, numbers, isStepUp: true, capacitors);
                }
            }
        }
    }

    /// <summary>Those of so many flying capacitors; made once.</summary>
    public static KnownFamilies Of(int capacitors) => s_known.GetOrAdd(capacitors, static c => new KnownFamilies(c));

    /// <summary>The members with a form, as <c>scnet family</c> takes them, in the order of the catalogue.</summary>
    public IReadOnlyList<string> Named(PhasesForm form) => _names.TryGetValue(Text(form), out List<string>? names) ? names.AsReadOnly() : [];

    /// <summary>The first member in the order of the catalogue that measures the same as a network in everything; null where none does.</summary>
    public SearchedNetwork? MeasuringAs(SearchedNetwork network) => _networks.GetValueOrDefault(Key(network));

    // a member of size n has no fewer than n - 1 capacitors; the numbers of a fraction do not exceed 2^capacitors
    private static IEnumerable<int[]> Numbers(Family family, int capacitors)
    {
        int largest = family.Parameters.Count == 1 ? capacitors + 1 : 1 << capacitors;
        int[][] all = family.Parameters.Count switch
        {
            1 => [.. Enumerable.Range(1, largest).Select(n => (int[])[n])],
            2 => [.. from first in Enumerable.Range(1, largest) from second in Enumerable.Range(1, largest) select (int[])[first, second]],
            _ => [],
        };
        return all.Where(n => family.Accepts(n));
    }

    private void Add(Family family, int[] numbers, bool isStepUp, int capacitors)
    {
        Converter member = family.Build(numbers, new FamilyOptions(isStepUp));
        if (member.Phases.Count is not (2 or 3) || member.Modes.Count != 1 || member.Inductors.Count > 0 || member.Capacitors.Count != capacitors)
        {
            return;
        }

        Wiring[] wirings = [.. member.Phases.Select(p => ConverterWiring.Of(member, p.Number))];
        if (wirings.All(w => w.IsAdmissible))
        {
            string form = Text(PhasesForm.Of([.. wirings.Select(LoopSpace.Of)]));
            string[] words = [family.Name, .. numbers.Select(n => n.ToString(CultureInfo.InvariantCulture)), .. isStepUp ? ["--step-up"] : Array.Empty<string>()];
            if (!_names.TryGetValue(form, out List<string>? names))
            {
                _names.Add(form, names = []);
            }

            names.Add(string.Join(' ', words));
            foreach (SwitchLayout layout in Enum.GetValues<SwitchLayout>())
            {
                if (SearchedNetwork.TryCreate(wirings, layout, out SearchedNetwork? network))
                {
                    _networks.TryAdd(Key(network), network);
                }
            }
        }
    }

    private static (int Phases, Fraction Ratio, NetworkMeasures Measures) Key(SearchedNetwork network) => (network.Phases.Count, network.Ratio, network.Measures);

    private static string Text(PhasesForm form) => string.Join(' ', form.Keys.ToArray().Select(k => k.ToString(CultureInfo.InvariantCulture)));
}
