namespace ScNet.Reconfiguration;

/// <summary>A set of switches between terminals that serves every network, and what each network joins.</summary>
/// <param name="CapacitorCount">The number of shared capacitors.</param>
/// <param name="Networks">Per network and phase the groups of terminals to join.</param>
/// <param name="Switches">The pairs of terminals that have a switch, ascending.</param>
internal sealed record OverlayPlan(int CapacitorCount, int[][][][] Networks, (int First, int Second)[] Switches)
{
    public Converter ToConverter(string name, IReadOnlyList<Converter> networks)
    {
        var builder = Converter.Create(name).Input("vin").Output("vout").Duties([.. networks[0].Phases.Select(p => p.Duty)]);
        for (int i = 0; i < CapacitorCount; i++)
        {
            builder.Capacitor($"fly{i + 1}", $"p{i + 1}", $"n{i + 1}");
        }

        for (int s = 0; s < Switches.Length; s++)
        {
            builder.Switch($"s{s + 1}", NodeName(Switches[s].First), NodeName(Switches[s].Second));
        }

        for (int k = 0; k < networks.Count; k++)
        {
            builder.Mode(networks[k].Name, [.. Closings(Networks[k])]);
        }

        return builder.Build();
    }

    private IEnumerable<(string Switch, PhaseSet On)> Closings(int[][][] phases)
    {
        List<int>[] on = [.. Switches.Select(_ => new List<int>())];
        for (int phase = 0; phase < phases.Length; phase++)
        {
            foreach (int[] group in phases[phase])
            {
                foreach (int s in SpanningSwitches(group))
                {
                    on[s].Add(phase + 1);
                }
            }
        }

        return on.Select((p, s) => ($"s{s + 1}", PhaseSet.Of([.. p]))).Where(c => c.Item2.Count > 0);
    }

    // Just enough switches to join the group, so that charge has one way to go.
    private IEnumerable<int> SpanningSwitches(int[] group)
    {
        HashSet<int> joined = [group[0]];
        for (bool isGrowing = true; isGrowing;)
        {
            isGrowing = false;
            for (int s = 0; s < Switches.Length; s++)
            {
                (int a, int b) = Switches[s];
                if (group.Contains(a) && group.Contains(b) && joined.Contains(a) != joined.Contains(b))
                {
                    joined.Add(a);
                    joined.Add(b);
                    isGrowing = true;
                    yield return s;
                }
            }
        }
    }

    private static string NodeName(int terminal) => terminal switch
    {
        0 => Converter.ReferenceNode,
        1 => "vin",
        2 => "vout",
        _ => ((terminal - OverlayGroups.PortCount) % 2 == 0 ? "p" : "n") + (((terminal - OverlayGroups.PortCount) / 2) + 1),
    };
}
