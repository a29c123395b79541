using System.Numerics;

namespace ScNet.Analysis;

/// <summary>
/// What topology says of every output of a mode: per output a flow that delivers one unit to it, nothing on the whole to the
/// others, and balances every capacitor.
/// </summary>
/// <remarks>Equations: docs/theory/several-outputs.md, "Averages". Index of outputs: the main one, then the further ones.</remarks>
internal sealed class OutputTopology
{
    private OutputTopology(Converter converter, TopologySolution?[] flows, Quantity[] ratios, IReadOnlyList<Diagnostic> diagnostics)
    {
        (Converter, Flows, Ratios, Diagnostics) = (converter, flows, ratios, diagnostics);
    }

    /// <summary>The converter with the further outputs that have a flow as ports of its network.</summary>
    public Converter Converter { get; }

    /// <summary>The flow of each output, as the topology of a mode of which it is the output; null where there is none.</summary>
    public TopologySolution?[] Flows { get; }

    /// <summary>The average voltage of each output in open circuit, per volt of input.</summary>
    public Quantity[] Ratios { get; }

    /// <summary>A warning per output without a flow.</summary>
    public IReadOnlyList<Diagnostic> Diagnostics { get; }

    /// <summary>Solves on machine integers, and again on big integers where those overflow.</summary>
    public static OutputTopology Of(ModeAnalysis analysis)
    {
        try
        {
            return Solve<long>(analysis);
        }
        catch (OverflowException)
        {
            return Solve<BigInteger>(analysis);
        }
    }

    private static OutputTopology Solve<T>(ModeAnalysis analysis)
        where T : struct, IBinaryInteger<T>
    {
        int count = analysis.Converter.FurtherOutputs.Count;
        OutputFindings findings = new(analysis);
        List<int> supplied = [.. Enumerable.Range(0, count)];
        OutputEquations<T> equations = new(analysis, supplied);
        while (findings.Check(equations, out int[] without))
        {
            supplied = [.. supplied.Except(without)];
            equations = new(analysis, supplied);
        }

        var flows = new TopologySolution?[count + 1];
        var ratios = new Quantity[count + 1];
        ratios[0] = analysis.Ratio;
        for (int k = 0; k <= supplied.Count && analysis.CarriesLoad; k++)
        {
            int output = k == 0 ? 0 : supplied[k - 1] + 1;
            flows[output] = equations.Flow(k);
            ratios[output] = output == 0 ? analysis.Ratio : equations.Ratio(flows[output]!);
        }

        return new(equations.Converter, flows, ratios, findings.Diagnostics);
    }
}
