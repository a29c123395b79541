namespace ScNet.Topologies;

/// <summary>Makes one converter of several: one after another, or side by side.</summary>
/// <remarks>
/// The ports of the result are "vin" and "vout". Every other node and every element gets the number of
/// its converter and a dot before its name: "1.fly1", "2.fly1"; so combinations of combinations stay
/// unique ("1.2.fly1"). Component values and series resistances are kept. Source: common practice, no
/// source; derived in docs/theory/families.md.
/// </remarks>
public static class Combine
{
    private const string Input = "vin";
    private const string Output = "vout";

    /// <summary>
    /// The output of each converter feeds the input of the next, with capacitors of 1 F on the nodes between;
    /// the other overload tells the rest.
    /// </summary>
    /// <param name="converters">At least one converter, the one at the input first.</param>
    /// <exception cref="ArgumentException">There is no converter, or the phases differ in number or duty.</exception>
    public static Converter Cascade(params Converter[] converters) => Cascade(converters, dcFarads: 1);

    /// <summary>
    /// The output of each converter feeds the input of the next. The ratios multiply; the output impedance is
    /// the last one's plus that of each before it times the square of the ratios behind it, and in the slow
    /// limit what the nodes between add.
    /// </summary>
    /// <remarks>
    /// <code>
    ///  vin ──[ 1 ]── mid1 ──[ 2 ]── mid2 ── … ──[ n ]── vout
    ///                 ═ dc1          ═ dc2
    ///                gnd            gnd
    /// </code>
    /// A stiff load of a converter before the last stood for a reservoir: the capacitor "dc(i)" on "mid(i)"
    /// takes its place. A converter with a current load lists its output capacitors, so no other is added.
    /// The load is that of the last. There is a mode for every choice of one mode from each converter,
    /// the last converter's changing fastest, named by the names of the choice joined with " × ";
    /// converters with a single mode are left out of the names. Time and space are linear in the result.
    /// </remarks>
    /// <param name="converters">At least one converter, the one at the input first.</param>
    /// <param name="dcFarads">Capacitance of every capacitor on a node between in farads (F).</param>
    /// <exception cref="ArgumentException">There is no converter, or the phases differ in number or duty.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The capacitance is not finite and positive.</exception>
    public static Converter Cascade(IReadOnlyList<Converter> converters, double dcFarads)
    {
        ArgumentNullException.ThrowIfNull(converters);
        if (converters.Count == 0)
        {
            throw new ArgumentException("Expected at least one converter, but got none.", nameof(converters));
        }

        foreach (Converter converter in converters)
        {
            ArgumentNullException.ThrowIfNull(converter, nameof(converters));
        }

        _ = Guard.InRange(dcFarads, allowZero: false, nameof(dcFarads));
        CombinedParts parts = new(string.Join(" then ", converters.Select(c => c.Name)), converters[0], converters[^1].Load);
        for (int i = 0; i < converters.Count; i++)
        {
            parts.RequireSameDuties(converters[i], 0, nameof(converters));
            parts.Add(converters[i], $"{i + 1}.", i == 0 ? Input : $"mid{i}", i == converters.Count - 1 ? Output : $"mid{i + 1}");
        }

        for (int i = 1; i < converters.Count; i++)
        {
            if (converters[i - 1].Load == LoadKind.Stiff)
            {
                parts.Builder.Capacitor($"dc{i}", $"mid{i}", Converter.ReferenceNode, dcFarads);
            }
        }

        return parts.Build(Choices(converters));
    }

    /// <summary>
    /// Both converters between the same input and the same output, in step or with the phases of the second
    /// turned against those of the first. The ratios must agree; with stiff loads conductances add: two equal
    /// converters have half the output impedance of one.
    /// </summary>
    /// <remarks>
    /// <code>
    ///  vin ─┬─[ 1 ]─┬─ vout        rotation 1:  converter 1   1  2  3
    ///       └─[ 2 ]─┘                           converter 2   3  1  2    its phases during those of 1
    /// </code>
    /// Converters whose ratios differ fight each other; the analysis reports the conflict. Modes pair by name,
    /// in the first one's order; a converter with a single mode goes with every mode of the other. With
    /// current loads both keep their output capacitors. Time and space are linear in the result.
    /// </remarks>
    /// <param name="first">The first converter.</param>
    /// <param name="second">The second converter, with a load of the same kind.</param>
    /// <param name="rotation">
    /// How many phases later than in the first a phase takes place in the second, from 0: 1 of two phases
    /// interleaves them.
    /// </param>
    /// <exception cref="ArgumentException">Phases (once turned), loads or names of modes do not match.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The rotation is negative or not below the number of phases.</exception>
    public static Converter Parallel(Converter first, Converter second, int rotation = 0)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        ArgumentOutOfRangeException.ThrowIfNegative(rotation);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(rotation, first.Phases.Count);
        if (first.Load != second.Load)
        {
            throw new ArgumentException($"Expected loads of one kind, but that of '{first.Name}' is {first.Load} and that of '{second.Name}' {second.Load}.", nameof(second));
        }

        CombinedParts parts = new($"{first.Name} beside {second.Name}", first, first.Load);
        parts.RequireSameDuties(second, rotation, nameof(second));
        parts.Add(first, "1.", Input, Output);
        parts.Add(second, "2.", Input, Output, rotation);
        return parts.Build(Pairs(first, second));
    }

    private static IEnumerable<(string Name, Mode[] Modes)> Choices(IReadOnlyList<Converter> converters)
    {
        IEnumerable<Mode[]> choices = [[]];
        foreach (Converter converter in converters)
        {
            choices = choices.SelectMany(_ => converter.Modes, (choice, mode) => (Mode[])[.. choice, mode]);
        }

        return choices.Select(choice =>
            (string.Join(" × ", choice.Where((_, i) => converters[i].Modes.Count > 1).Select(m => m.Name)), choice));
    }

    private static IEnumerable<(string Name, Mode[] Modes)> Pairs(Converter first, Converter second)
    {
        if (first.Modes.Count == 1 || second.Modes.Count == 1)
        {
            return Choices([first, second]);
        }

        string[] lonely =
        [
            .. first.Modes.Select(m => m.Name).Except(second.Modes.Select(m => m.Name)),
            .. second.Modes.Select(m => m.Name).Except(first.Modes.Select(m => m.Name)),
        ];
        return lonely.Length == 0
            ? first.Modes.Select(m => (m.Name, (Mode[])[m, second.Modes[m.Name]]))
            : throw new ArgumentException($"Expected the same modes in '{first.Name}' and '{second.Name}', but only one of them has '{string.Join("', '", lonely)}'.", nameof(second));
    }
}
