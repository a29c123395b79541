using System.Globalization;
using ScNet.Analysis;

namespace ScNet.SteadyState;

/// <summary>
/// What the dense parts of a steady state would cost, told before any of them is begun, so that a network too large
/// is refused instead of running for minutes or out of memory.
/// </summary>
/// <remarks>Every count is an upper estimate: rows that do not hang together cost less.</remarks>
internal sealed class SteadyStateSize
{
    private readonly Converter _converter;
    private readonly TopologySolution _topology;
    private readonly PartSize[] _parts;

    private SteadyStateSize(Converter converter, TopologySolution topology, PartSize[] parts)
    {
        _converter = converter;
        _topology = topology;
        _parts = parts;
    }

    /// <summary>The size of a mode.</summary>
    /// <param name="converter">The converter.</param>
    /// <param name="topology">The topology of the mode.</param>
    /// <param name="parts">Its independent parts.</param>
    public static SteadyStateSize Of(Converter converter, TopologySolution topology, IEnumerable<PartSize> parts) =>
        new(converter, topology, [.. parts]);

    /// <summary>The flows of all resistors.</summary>
    /// <exception cref="ScNetException">They are too large.</exception>
    public void RequireFlows() => Require(Sum((p, _) => p.Flows));

    /// <summary>The impedance at any frequency.</summary>
    /// <param name="isChain">Whether a phase of a part is a set of chains; asked only where dense rows would be too large.</param>
    /// <exception cref="ScNetException">It is too large.</exception>
    public void RequireImpedance(Func<int, int, bool> isChain) =>
        Require(Sum((p, _) => p.Flows + p.Impedance(null)), () => Sum((p, k) => p.Flows + p.Impedance(j => isChain(k, j))));

    /// <summary>Waveforms, stress and losses of every element, or their sensitivities.</summary>
    /// <param name="isChain">Whether a phase of a part is a set of chains; asked only where dense rows would be too large.</param>
    /// <exception cref="ScNetException">They are too large.</exception>
    public void RequireElements(Func<int, int, bool> isChain) =>
        Require(Sum((p, _) => p.Flows + p.Elements(null)), () => Sum((p, k) => p.Flows + p.Elements(j => isChain(k, j))));

    /// <summary>Anything else.</summary>
    /// <param name="cost">What it costs.</param>
    /// <exception cref="ScNetException">It is too large.</exception>
    public void Require(SteadyStateCost cost) => Require(cost, () => cost);

    private SteadyStateCost Sum(Func<PartSize, int, SteadyStateCost> cost) => _parts.Select(cost).Aggregate((a, b) => a + b);

    private void Require(SteadyStateCost first, Func<SteadyStateCost> closer)
    {
        if (!first.IsTooLarge || closer() is not { IsTooLarge: true } cost)
        {
            return;
        }

        Mode mode = _topology.Mode;
        int resistances = _converter.Capacitors.Count(c => c.EsrOhms > 0)
            + _converter.Phases.Max(p => _converter.Network.ClosedIn(mode.Index, p.Number - 1).Count(true));
        string size = $"{UnitText.Count(_converter.Phases.Count, "phase", "phases")} with up to {UnitText.Count(resistances, "resistance", "resistances")}, "
            + $"{UnitText.Count(_converter.Capacitors.Count, "capacitor", "capacitors")} and {UnitText.Count(_topology.Directions.Count, "free direction", "free directions")}";
        string excess = cost.Steps > SteadyStateCost.MostSteps
            ? $"{Round(cost.Steps)} multiplications, and at most {Round(SteadyStateCost.MostSteps)} are allowed"
            : $"{Round(8 * cost.Numbers)} bytes, and at most {Round(8 * SteadyStateCost.MostNumbers)} are allowed";
        throw new ScNetException($"Mode '{mode.Name}' of '{_converter.Name}' has no steady state:", [new Diagnostic(
            DiagnosticSeverity.Error,
            DiagnosticCodes.SteadyStateTooLarge,
            $"The exact steady state of {size} would take {excess}. Of equal cells on one load current analyse one by itself and divide its impedance by their number; otherwise analyse the parts of the converter one by one.",
            [])]);
    }

    private static string Round(double value) => value.ToString("0.#E+0", CultureInfo.InvariantCulture);
}
