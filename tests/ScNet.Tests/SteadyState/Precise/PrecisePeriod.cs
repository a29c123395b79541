using ScNet.Tests.Numerics;

namespace ScNet.Tests.SteadyState.Precise;

/// <summary>
/// The periodic state of a mode by matrix exponentials phase by phase, and what its ports show on average, a column per
/// input: volts at the input, volts or amperes at the output, amperes of further loads.
/// </summary>
internal sealed class PrecisePeriod
{
    // A charge or a flux that no phase can change leaves a pivot of rounding: far below 1e-100, where rates over 24 decades do not reach.
    private const double Zero = 1e-100;

    private readonly PreciseNetwork _network;

    private PrecisePeriod(PreciseNetwork network, BigReal frequencyHz)
    {
        _network = network;
        FrequencyHz = frequencyHz;
        int n = network.StateCount, p = network.InputCount;
        Maps = [.. network.Phases.Select(phase => Augmented(phase).Times(phase.Duty / frequencyHz).Exponential())];
        BigMatrix period = Maps.Aggregate((all, map) => map * all);
        BigMatrix change = BigMatrix.Identity(n) - period.Part(0, 0, n, n), drive = period.Part(0, n, n, p);
        Start = change.Solve(drive, Zero);
        Means = (period.Part(n + p, 0, p, n) * Start + period.Part(n + p, n, p, p)).Times(frequencyHz);
        HasState = ((change * Start) - drive).IsWithin(Zero);
    }

    public BigReal FrequencyHz { get; }

    /// <summary>Whether no state that nothing moves back is driven on and on.</summary>
    public bool HasState { get; }

    /// <summary>The state at the start of phase 1; of what nothing moves any value serves, and zero is chosen.</summary>
    public BigMatrix Start { get; }

    /// <summary>What <see cref="PreciseNetwork.Shown"/> shows on average.</summary>
    public BigMatrix Means { get; }

    /// <summary>Per phase the map of (state, inputs, integrals of what is shown) from its start to its end.</summary>
    public BigMatrix[] Maps { get; }

    /// <summary>Solves a network.</summary>
    /// <param name="network">A network every current of which has a path.</param>
    /// <param name="frequencyHz">The switching frequency.</param>
    public static PrecisePeriod Of(PreciseNetwork network, BigReal frequencyHz) => new(network, frequencyHz);

    /// <summary>What input and output of a mode see of each other.</summary>
    public static PortOracle.Ports Ports(Converter converter, Mode mode, double frequencyHz) =>
        Ports(PreciseNetwork.Of(converter, mode), frequencyHz).Ports;

    /// <summary>The same in all places: ratio, ohms, current ratio, input conductance.</summary>
    public static PrecisePorts Ports(PreciseNetwork network, BigReal frequencyHz) => PrecisePorts.Of(Of(network, frequencyHz));

    /// <summary>The state and the inputs at the start of every phase, then at the end of the last, a column per input.</summary>
    public BigMatrix[] Instants()
    {
        int size = _network.StateCount + _network.InputCount;
        List<BigMatrix> instants = [Start.Above(BigMatrix.Identity(_network.InputCount))];
        foreach (BigMatrix map in Maps)
        {
            instants.Add(map.Part(0, 0, size, size) * instants[^1]);
        }

        return [.. instants];
    }

    /// <summary>What the ports show with the output's current as what is given, whatever the load is.</summary>
    public BigMatrix ByCurrents()
    {
        if (!_network.IsStiff)
        {
            return Means;
        }

        // P maps (V_in, V_0, …) to (V_in, I_0, …); the rows are I_in, V_0, …
        int p = _network.InputCount;
        BigMatrix given = BigMatrix.Identity(p), shown = Means.Part(0, 0, p, p);
        for (int k = 0; k < p; k++)
        {
            (given[1, k], shown[1, k]) = (Means[1, k], k == 1 ? BigReal.One : default);
        }

        return shown * given.Inverse();
    }

    private BigMatrix Augmented(PrecisePhase phase)
    {
        int n = _network.StateCount, p = _network.InputCount;
        return phase.Rates.Above(new BigMatrix(p, n + p)).Above(_network.Shown(phase)).Beside(new BigMatrix(n + p + p, p));
    }
}
