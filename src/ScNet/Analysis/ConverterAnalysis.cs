namespace ScNet.Analysis;

/// <summary>What came of analysing each mode of a converter.</summary>
public sealed class ConverterAnalysis
{
    private ConverterAnalysis(Converter converter, NamedList<ModeOutcome> modes)
    {
        Converter = converter;
        Modes = modes;
    }

    /// <summary>The converter.</summary>
    public Converter Converter { get; }

    /// <summary>One outcome per mode, by name and by position as in <see cref="Converter.Modes"/>.</summary>
    public NamedList<ModeOutcome> Modes { get; }

    /// <summary>The analyses of the modes that have a result, in the order of <see cref="Converter.Modes"/>.</summary>
    public IEnumerable<ModeAnalysis> Results => Modes.Select(m => m.Analysis).OfType<ModeAnalysis>();

    /// <summary>Whether every mode has a result.</summary>
    public bool HasAllResults => Modes.All(m => m.HasResult);

    /// <summary>Analyses every mode.</summary>
    /// <param name="converter">The converter.</param>
    public static ConverterAnalysis Of(Converter converter)
    {
        ArgumentNullException.ThrowIfNull(converter);
        ModeOutcome[] modes = [.. converter.Modes.Select(m => ModeAnalysis.Try(converter, m))];
        return new ConverterAnalysis(converter, new NamedList<ModeOutcome>(modes, converter.Modes.Names));
    }

    /// <summary>The converter's name and how many modes have a result.</summary>
    public override string ToString() => $"{Converter.Name}: {Modes.Count(m => m.HasResult)} of {Modes.Count} modes with a result";
}
