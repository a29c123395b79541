using ScNet.Search.LoopSpaces;
using ScNet.Search.Networks;
using ScNet.Search.Pairs;

namespace ScNet.Search.Atlases;

/// <summary>Measures every network of a walk's pairs, in all wirings and both layouts, and keeps the front of each ratio. One per thread.</summary>
internal sealed class FrontCollector : IPairVisitor
{
    private readonly int _capacitors;
    private readonly PairCharges _charges;
    private readonly PlacedWirings _fixed;
    private readonly PlacedWirings _moving;
    private readonly int[] _positions;
    private readonly int[] _identity;
    private readonly int[] _fixedCharges;
    private readonly int[] _movingCharges;
    private readonly Dictionary<LoopSpaceOrbit, WiringFrame[]> _frames = [];
    private WiringFrame[] _fixedFrames = [];
    private WiringFrame[] _movingFrames = [];

    public FrontCollector(int capacitors)
    {
        _capacitors = capacitors;
        _charges = new PairCharges(capacitors);
        _fixed = new PlacedWirings(capacitors);
        _moving = new PlacedWirings(capacitors);
        _positions = new int[capacitors];
        _identity = [.. Enumerable.Range(0, capacitors)];
        _fixedCharges = new int[Terminals.Count(capacitors)];
        _movingCharges = new int[Terminals.Count(capacitors)];
    }

    /// <summary>The pairs in which topology decides everything and every capacitor works.</summary>
    public long NetworkCount { get; private set; }

    /// <summary>Their wirings, pair by pair.</summary>
    public long WiringCount { get; private set; }

    /// <summary>The fronts, by output and input voltage in lowest terms, the input's positive.</summary>
    public Dictionary<(int Output, int Input), FrontOfRatio> Fronts { get; } = [];

    public void Visit(PairWalk walk, int place)
    {
        if (!_charges.TryFind(walk, place))
        {
            return;
        }

        NetworkCount++;
        int[] voltages = walk.Voltages;
        Normalise(voltages);
        int divisor = Kernel.Integers.Gcd(voltages[0], voltages[1]);
        (int Output, int Input) ratio = (voltages[1] / divisor, voltages[0] / divisor);
        if (!Fronts.TryGetValue(ratio, out FrontOfRatio? front))
        {
            Fronts.Add(ratio, front = new FrontOfRatio());
        }

        int turns = MovingOrbit.Unpack(walk.Moving.Ways[place], _positions);
        _fixedFrames = FramesOf(walk.Fixed);
        _movingFrames = FramesOf(walk.Moving.Orbit);
        _fixed.Place(_fixedFrames, voltages, _identity, 0);
        _moving.Place(_movingFrames, voltages, _positions, turns);
        TerminalCharges.Write<int>(_charges.Fixed, _fixedCharges);
        TerminalCharges.Write<int>(_charges.Moving, _movingCharges);
        PairSums sums = PairSums.Of(voltages, _charges);
        for (int f = 0; f < _fixed.Count; f++)
        {
            for (int m = 0; m < _moving.Count; m++)
            {
                WiringCount++;
                SwitchSums switches = default;
                switches.Add(_fixed.Nodes(f), _fixedCharges, _moving.Row(m), _moving.Nodes(m), _moving.Potentials(m));
                switches.Add(_moving.Nodes(m), _movingCharges, _fixed.Row(f), _fixed.Nodes(f), _fixed.Potentials(f));
                long swing = Swing(f, m);
                Offer(front, sums.KeyOf(switches, swing, switches.RowCharge, switches.RowVoltage), f, m, turns, SwitchLayout.LowestBlocking);

                // straight paths block no less than rows, so that what is beaten at the rows' voltage need not be looked at
                if (switches.StraightCharge < switches.RowCharge
                    && !front.Beats(sums.KeyOf(switches, swing, switches.StraightCharge, switches.RowVoltage)))
                {
                    MeasureKey straight = sums.KeyOf(switches, swing, switches.StraightCharge, StraightVoltage(f, m));
                    Offer(front, straight, f, m, turns, SwitchLayout.LeastCharge);
                }
            }
        }
    }

    private void Offer(FrontOfRatio front, in MeasureKey key, int fixedWiring, int movingWiring, int turns, SwitchLayout layout)
    {
        if (!front.Beats(key))
        {
            front.Add(key, new NetworkPlace(
                _fixedFrames[fixedWiring].Wiring.ToCode(), _movingFrames[movingWiring].Wiring.Moved(_positions, turns).ToCode(), layout));
        }
    }

    private int StraightVoltage(int fixedWiring, int movingWiring) => Math.Max(
        StraightPaths.HighestVoltage(
            _fixed.Nodes(fixedWiring), _fixedCharges, _moving.Row(movingWiring), _moving.Nodes(movingWiring), _moving.Potentials(movingWiring)),
        StraightPaths.HighestVoltage(
            _moving.Nodes(movingWiring), _movingCharges, _fixed.Row(fixedWiring), _fixed.Nodes(fixedWiring), _fixed.Potentials(fixedWiring)));

    private static void Normalise(int[] voltages)
    {
        int divisor = 0;
        foreach (int voltage in voltages)
        {
            divisor = divisor == 0 ? Math.Abs(voltage) : Kernel.Integers.Gcd(divisor, voltage);
        }

        divisor = voltages[0] < 0 ? -divisor : divisor;
        for (int b = 0; b < voltages.Length; b++)
        {
            voltages[b] /= divisor;
        }
    }

    private WiringFrame[] FramesOf(LoopSpaceOrbit orbit)
    {
        if (!_frames.TryGetValue(orbit, out WiringFrame[]? frames))
        {
            _frames.Add(orbit, frames = WiringFrame.Of(orbit));
        }

        return frames;
    }

    // Σ |charge| · swing²
    private long Swing(int fixedWiring, int movingWiring)
    {
        ReadOnlySpan<int> first = _fixed.Potentials(fixedWiring), second = _moving.Potentials(movingWiring);
        long sum = 0;
        for (int c = 0; c < _capacitors; c++)
        {
            long swing = first[Terminals.BottomPlate(c)] - second[Terminals.BottomPlate(c)];
            sum += Math.Abs(_charges.Fixed[LoopSpace.FirstCapacitorColumn + c]) * swing * swing;
        }

        return sum;
    }
}
