using Fractions;

namespace ScNet.Topologies;

/// <summary>Collects the elements of several converters under new names.</summary>
internal sealed class CombinedParts
{
    private readonly Converter _first;
    private readonly List<(Converter Converter, string Prefix, int Rotation)> _added = [];

    /// <param name="name">The name of the result.</param>
    /// <param name="first">The converter whose phases are those of the result.</param>
    /// <param name="load">The load of the result.</param>
    public CombinedParts(string name, Converter first, LoadKind load)
    {
        _first = first;
        Builder = Converter.Create(name).Input("vin").Output("vout", load).Duties([.. first.Phases.Select(p => p.Duty)]);
        if (first.Phases.Any(p => p.Name != $"{p.Number}"))
        {
            Builder.PhaseNames([.. first.Phases.Select(p => p.Name)]);
        }
    }

    public ConverterBuilder Builder { get; }

    /// <summary>Requires that the phases of a converter, turned, are as long as those of the first one.</summary>
    public void RequireSameDuties(Converter converter, int rotation, string parameterName)
    {
        Fraction[] expected = [.. _first.Phases.Select(p => p.Duty)];
        Fraction[] actual = [.. converter.Phases.Select(p => p.Duty)];
        if (expected.Length != actual.Length || actual.Where((d, j) => d != expected[(j + rotation) % expected.Length]).Any())
        {
            string turned = rotation > 0 ? $" to fit when turned by {rotation}" : "";
            throw new ArgumentException($"Expected the duties of '{converter.Name}'{turned} to be those of '{_first.Name}', {string.Join(", ", expected)}, but they are {string.Join(", ", actual)}. Build both with the same phases.", parameterName);
        }
    }

    /// <summary>Adds the elements of a converter; its phase j takes place in phase j + rotation.</summary>
    public void Add(Converter converter, string prefix, string input, string output, int rotation = 0)
    {
        _added.Add((converter, prefix, rotation));
        Builder.AddElements(converter, prefix, Node);

        string Node(string name) => name == Converter.ReferenceNode ? name
            : name == converter.InputNode ? input
            : name == converter.OutputNode ? output
            : prefix + name;
    }

    /// <summary>The converter.</summary>
    /// <param name="modes">The modes, each with its name (empty for the only one) and the mode of every converter added.</param>
    public Converter Build(IEnumerable<(string Name, Mode[] Modes)> modes)
    {
        foreach ((string name, Mode[] choice) in modes)
        {
            Builder.Mode(name.Length > 0 ? name : Mode.DefaultName, [.. _added.SelectMany((a, i) => a.Converter.Entries(choice[i], a.Prefix, p => [((p - 1 + a.Rotation) % a.Converter.Phases.Count) + 1]))]);
        }

        return Builder.Build();
    }
}
