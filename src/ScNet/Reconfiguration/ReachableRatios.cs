namespace ScNet.Reconfiguration;

/// <summary>
/// Every ratio that a given set of switches and capacitors can reach in two phases, found by going
/// through all gate patterns: each switch open, closed in phase 1, in phase 2, or in both.
/// </summary>
/// <remarks>
/// Exhaustive without trying all 4^n patterns one by one: sets of closed switches fall into classes with
/// the same loop equations, and pairs of classes fix ratio, capacitor charges and slow limit. Only the
/// largest sets of a class can be best by fast limit or stress. Derivation: docs/theory/reachable-ratios.md.
/// Cost: about 2^n loop searches and one elimination per pair of classes, on all cores.
/// </remarks>
public sealed class ReachableRatios
{
    /// <summary>The largest number of switches that is searched.</summary>
    public const int MaximumSwitchCount = 16;

    private const int ShownRatios = 20;

    private ReachableRatios(int switchCount, ReachableRatio[] ratios)
    {
        PatternCount = 1L << (2 * switchCount);
        Ratios = Array.AsReadOnly(ratios);
    }

    /// <summary>The number of gate patterns gone through, 4 to the power of the switch count.</summary>
    public long PatternCount { get; }

    /// <summary>The ratios in ascending order.</summary>
    public IReadOnlyList<ReachableRatio> Ratios { get; }

    /// <summary>Searches all gate patterns of a converter's switches; its own modes do not matter.</summary>
    /// <param name="converter">A converter of two phases with a stiff load and at most <see cref="MaximumSwitchCount"/> switches.</param>
    /// <param name="progress">Receives the fraction done, from 0 to 1, from any thread; may be null.</param>
    /// <param name="cancellationToken">Stops the search.</param>
    /// <exception cref="ArgumentException">The converter has more than two phases, more switches, or a current load.</exception>
    /// <exception cref="ScNetException">The converter has inductors.</exception>
    /// <exception cref="OperationCanceledException">The search was stopped.</exception>
    public static ReachableRatios Of(
        Converter converter, IProgress<double>? progress = null, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(converter);
        InductorSupport.Refuse(converter, "The search of all gate patterns");
        if (converter.Phases.Count != 2 || converter.Load != LoadKind.Stiff || converter.Switches.Count > MaximumSwitchCount)
        {
            throw new ArgumentException(
                $"Expected two phases, a stiff load and at most {MaximumSwitchCount} switches, but '{converter.Name}' has {converter.Phases.Count} phases, load {converter.Load} and {converter.Switches.Count} switches.",
                nameof(converter));
        }

        List<PhaseClass> classes = PhaseClasses.Of(converter.Network, cancellationToken);
        RatioCollection found = new(converter);
        int done = 0;
        ParallelLoop.Run(() => Parallel.For(
            0,
            classes.Count,
            new ParallelOptions { CancellationToken = cancellationToken },
            () => new ClassPairSearch(converter, found, cancellationToken),
            (first, _, search) =>
            {
                for (int second = 0; second <= first; second++)
                {
                    search.Try(classes[first], classes[second]);
                }

                progress?.Report((double)Interlocked.Increment(ref done) / classes.Count);
                return search;
            },
            _ => { }));
        return new ReachableRatios(converter.Switches.Count, found.ToArray());
    }

    /// <summary>The count of ratios and patterns, and the first ratios.</summary>
    public override string ToString() =>
        $"{UnitText.Count(Ratios.Count, "ratio", "ratios")} by {UnitText.Count(PatternCount, "pattern", "patterns")}: {string.Join(", ", Ratios.Take(ShownRatios).Select(r => Quantity.Exact(r.Ratio)))}{(Ratios.Count > ShownRatios ? ", …" : string.Empty)}";
}
