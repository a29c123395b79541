namespace ScNet.Reconfiguration;

/// <summary>A way to lay single-ratio networks over one another on shared capacitors.</summary>
/// <remarks>
/// <see cref="OverlayHeuristic"/> is the one that comes with this package. Another one finds the least number of switches with a
/// proof: <c>LeastOverlay</c> of the package ScNet.Synthesis, which brings a solver.
/// </remarks>
public interface IOverlayMethod
{
    /// <summary>Lays networks over one another.</summary>
    /// <param name="name">The name of the converter.</param>
    /// <param name="networks">The converters, each with one mode, a stiff load and the same phases; the names become mode names.</param>
    /// <param name="progress">Receives the fraction done, from 0 to 1; may be null.</param>
    /// <param name="cancellationToken">Stops the search.</param>
    /// <exception cref="ArgumentException">There is no network, or one has several modes, a current load, other duties than the first or more than <see cref="Overlay.LargestCapacitorCount"/> capacitors.</exception>
    /// <exception cref="ScNetException">A network has inductors.</exception>
    /// <exception cref="OperationCanceledException">The search was stopped.</exception>
    Overlay Lay(string name, IReadOnlyList<Converter> networks, IProgress<double>? progress = null, CancellationToken cancellationToken = default);
}
