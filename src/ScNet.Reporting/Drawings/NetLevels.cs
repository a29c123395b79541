namespace ScNet.Reporting.Drawings;

/// <summary>How high each net is drawn: its potential where it is known.</summary>
internal static class NetLevels
{
    /// <summary>
    /// The potentials; where a net has none, that of a neighbour shifted by the voltage of the capacitor between them, or by
    /// nothing over any other part. Nets that nothing leads to from a known one are counted from the first of them.
    /// </summary>
    /// <param name="count">The number of nets.</param>
    /// <param name="potential">The potential of a net, or undetermined.</param>
    /// <param name="parts">The parts between nets.</param>
    /// <param name="voltage">The voltage of a capacitor by its name.</param>
    public static double[] Of(int count, Func<int, Quantity> potential, IReadOnlyList<CircuitPart> parts, Func<string, Quantity> voltage)
    {
        double[] levels = new double[count];
        bool[] isKnown = new bool[count];
        for (int net = 0; net < count; net++)
        {
            isKnown[net] = potential(net).TryGetDouble(out double value);
            levels[net] = Rounded(value);
        }

        for (int start = 0; start < count; start++)
        {
            Spread();
            isKnown[start] = true;
        }

        return levels;

        void Spread()
        {
            for (bool hasSpread = true; hasSpread;)
            {
                hasSpread = false;
                foreach (CircuitPart part in parts.Where(p => p.Kind is PartKind.Capacitor or PartKind.Inductor or PartKind.Parasitic or PartKind.Switch && isKnown[p.First] != isKnown[p.Second]))
                {
                    double fall = part.Kind == PartKind.Capacitor && voltage(part.Name).TryGetDouble(out double volts) ? Rounded(volts) : 0;
                    (int from, int to, double change) = isKnown[part.First] ? (part.First, part.Second, -fall) : (part.Second, part.First, fall);
                    levels[to] = levels[from] + change;
                    hasSpread = isKnown[to] = true;
                }
            }
        }
    }

    /// <summary>A level without the last digits, so that equal potentials are equal levels.</summary>
    public static double Rounded(double value) => Math.Round(value, 9);
}
