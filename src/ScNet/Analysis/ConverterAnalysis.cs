namespace ScNet.Analysis;

/// <summary>The analyses of all modes of a converter, in the order of <see cref="Converter.Modes"/>.</summary>
public sealed class ConverterAnalysis
{
    private ConverterAnalysis(Converter converter, ModeAnalysis[] modes)
    {
        Converter = converter;
        Modes = modes;
    }

    /// <summary>The converter.</summary>
    public Converter Converter { get; }

    /// <summary>One analysis per mode; index as in <see cref="Converter.Modes"/>.</summary>
    public IReadOnlyList<ModeAnalysis> Modes { get; }

    /// <summary>Whether every mode has a result.</summary>
    public bool HasAllResults => Modes.All(m => m.HasResult);

    /// <summary>The analysis of the mode of the given name.</summary>
    /// <exception cref="ArgumentException">The converter has no such mode.</exception>
    public ModeAnalysis this[string mode] => Modes[Converter.FindMode(mode).Index];

    /// <summary>Analyses every mode.</summary>
    /// <param name="converter">The converter.</param>
    public static ConverterAnalysis Of(Converter converter)
    {
        ArgumentNullException.ThrowIfNull(converter);
        return new ConverterAnalysis(converter, [.. converter.Modes.Select(m => ModeAnalysis.Of(converter, m))]);
    }

    /// <summary>The converter's name and how many modes have a result.</summary>
    public override string ToString() => $"{Converter.Name}: {Modes.Count(m => m.HasResult)} of {Modes.Count} modes with a result";
}
