namespace ScNet.Reconfiguration;

/// <summary>Tries mappings of capacitors and thins out the switches for each, as <see cref="Overlay.Of"/> does: few switches, not proved least.</summary>
/// <param name="seed">Starts the random choices of the search; the same number gives the same converter.</param>
public sealed class OverlayHeuristic(int seed = 1) : IOverlayMethod
{
    /// <summary>That of seed 1.</summary>
    public static OverlayHeuristic Default { get; } = new();

    /// <inheritdoc/>
    public Overlay Lay(string name, IReadOnlyList<Converter> networks, IProgress<double>? progress = null, CancellationToken cancellationToken = default)
    {
        Overlay.Check(name, networks);
        return new Overlay(new OverlaySearch(networks, seed, progress, cancellationToken).Run().ToConverter(name, networks), networks.Sum(n => n.Switches.Count));
    }

    /// <summary>What it is, and its seed.</summary>
    public override string ToString() => FormattableString.Invariant($"overlays by search from seed {seed}, not proved least");
}
