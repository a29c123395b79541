namespace ScNet.Reporting.Drawings;

/// <summary>How far nets are from one another, in parts on the way; the reference is no thoroughfare.</summary>
internal static class NetDistances
{
    /// <summary>The least number of parts between a net and every other; <see cref="int.MaxValue"/> where there is no way.</summary>
    public static int[] From(Circuit circuit, int start)
    {
        int[] distances = new int[circuit.Nets.Count];
        Array.Fill(distances, int.MaxValue);
        distances[start] = 0;
        Queue<int> waiting = new([start]);
        while (waiting.TryDequeue(out int net))
        {
            if (net == 0 && start != 0)
            {
                continue;
            }

            foreach (CircuitPart part in circuit.Parts.Where(p => (p.First == net || p.Second == net) && p.Kind != PartKind.Source))
            {
                int other = part.First == net ? part.Second : part.First;
                if (distances[other] == int.MaxValue)
                {
                    distances[other] = distances[net] + 1;
                    waiting.Enqueue(other);
                }
            }
        }

        return distances;
    }
}
