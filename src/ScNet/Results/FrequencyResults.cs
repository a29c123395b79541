using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Results;

/// <summary>What is said of a mode at one frequency.</summary>
/// <param name="Impedance">The output impedance.</param>
/// <param name="Outputs">All outputs; null where there is one only.</param>
internal readonly record struct FrequencyResults(ImpedancePoint Impedance, MultiPortPoint? Outputs)
{
    /// <summary>The results at every frequency.</summary>
    /// <exception cref="ScNetException">There are none: the network is too large, or has no periodic state.</exception>
    public static FrequencyResults[] Of(ModeAnalysis analysis, double[] frequenciesHz)
    {
        SteadyStateModel model = SteadyStateModel.Of(analysis);
        bool hasOutputs = analysis.Converter.FurtherOutputs.Count > 0;
        return Array.ConvertAll(frequenciesHz, f => new FrequencyResults(model.At(f), hasOutputs ? model.MultiPort.At(f) : null));
    }
}
