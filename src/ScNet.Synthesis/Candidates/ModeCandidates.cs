using Fractions;
using ScNet.Search;
using ScNet.Search.LoopSpaces;

namespace ScNet.Synthesis.Candidates;

/// <summary>The candidates of one ratio at its highest input voltage.</summary>
/// <param name="Wanted">The ratio.</param>
/// <param name="Groups">The loop spaces under their voltages.</param>
/// <param name="Pairs">Pairs of positions in <paramref name="Groups"/>.</param>
internal sealed record ModeCandidates(WantedRatio Wanted, IReadOnlyList<StateGroup> Groups, IReadOnlyList<(int First, int Second)> Pairs)
{
    private readonly Fraction _inputVolts = ExactDecimal.Of(Wanted.HighestInputVolts);

    /// <summary>The voltage between two terminals in a state, first less second, in volts.</summary>
    public Fraction Volts(PhaseState state, int first, int second) =>
        new Fraction(state.Potentials[first] - state.Potentials[second], state.Potentials[Terminals.Input]) * _inputVolts;

    /// <summary>Those whose capacitors hold no more than a voltage.</summary>
    public ModeCandidates Within(double capacitorVolts)
    {
        Fraction rating = ExactDecimal.Of(capacitorVolts);
        return this with { Pairs = [.. Pairs.Where(p => HighestCapacitorVolts(Groups[p.First]) <= rating)] };
    }

    /// <summary>One of each kind: pairs that differ in the names, directions or phases only count as one.</summary>
    public ModeCandidates OneOfEachKind() => this with { Pairs = Orbits.Representatives(Groups, Pairs) };

    private Fraction HighestCapacitorVolts(StateGroup group) =>
        new Fraction(group.Voltages.Skip(LoopSpace.FirstCapacitorColumn).Max(Math.Abs), group.Voltages[LoopSpace.InputColumn]) * _inputVolts;
}
