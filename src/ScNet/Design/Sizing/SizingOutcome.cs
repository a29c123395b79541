namespace ScNet.Design.Sizing;

/// <summary>What came of looking for sizes.</summary>
public sealed class SizingOutcome
{
    internal SizingOutcome(string name, SizedDesign? design, IReadOnlyList<UnreachablePoint> unreachable, IReadOnlyList<Diagnostic> findings)
    {
        Name = name;
        Design = design;
        Unreachable = unreachable;
        Findings = findings;
    }

    /// <summary>The sizes; null where no kind of device withstands an element's voltage, or no point can be reached.</summary>
    public SizedDesign? Design { get; }

    /// <summary>The points at which no sizes within the area hold the output.</summary>
    public IReadOnlyList<UnreachablePoint> Unreachable { get; }

    /// <summary>What stands against sizes, as errors, and what is uncertain, as warnings.</summary>
    public IReadOnlyList<Diagnostic> Findings { get; }

    /// <summary>The name of the converter.</summary>
    private string Name { get; }

    /// <summary>The sizes.</summary>
    /// <exception cref="ScNetException">There are none; the exception carries the findings.</exception>
    public SizedDesign Require() => Design ?? throw new ScNetException($"There are no sizes for '{Name}':", Findings);

    /// <summary>The sizes, or why there are none.</summary>
    public override string ToString() => Design?.ToString() ?? $"{Name}: no sizes; {string.Join("; ", Findings)}";
}
