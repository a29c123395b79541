using System.Globalization;

namespace ScNet.Search.Networks;

/// <summary>A searched network as a converter with names.</summary>
internal static class NetworkConverter
{
    /// <summary>A converter of phases of equal length; terminals that are joined in every phase share a node, named after the first of them.</summary>
    public static Converter Of(SearchedNetwork network, string name)
    {
        int[] groups = SwitchPlan.PermanentGroups(network.Phases);
        string NodeOf(int terminal) => Terminals.NameOf(groups[terminal]);
        string Numbered(string letter, int position) => string.Create(CultureInfo.InvariantCulture, $"{letter}{position + 1}");
        ConverterBuilder builder = Converter.Create(name)
            .Input(NodeOf(Terminals.Input))
            .Output(NodeOf(Terminals.Output))
            .Phases(network.Phases.Count);
        for (int c = 0; c < network.CapacitorCount; c++)
        {
            builder.Capacitor(Numbered("c", c), NodeOf(Terminals.PositivePlate(c)), NodeOf(Terminals.BottomPlate(c)));
        }

        for (int s = 0; s < network.Switches.Count; s++)
        {
            NetworkSwitch planned = network.Switches[s];
            builder.Switch(Numbered("s", s), NodeOf(planned.First), NodeOf(planned.Second), PhaseSet.Of([.. planned.ClosedPhases]));
        }

        return builder.Build();
    }
}
