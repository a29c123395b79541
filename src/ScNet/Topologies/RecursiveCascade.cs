using System.Numerics;

namespace ScNet.Topologies;

/// <summary>
/// The recursive cascade: n two-to-one cells in a row, each of which halves between the output of the cell
/// before it and one of the outer rails, so that every ratio k/2^n comes in two phases.
/// </summary>
/// <remarks>
/// Cell i has its middle node mi at half way between its rails: where bit i - 1 of k is 1 the rails are the
/// high node and m(i-1), where it is 0 they are m(i-1) and the reference; cell 1 always has the high node
/// and the reference. The last middle node is the low node:
/// <code>
///  high –in i– ti        or   m(i-1) –from i– ti        ti ═fly i═ bi       bi –mid i– mi      closed in phase 1
///  bi –onto i– m(i-1)    or   bi –ground i– gnd                             ti –top i– mi      closed in phase 2
///  mi ═dc i═ gnd                                                                               for i below n
/// </code>
/// n capacitors "fly1" to "fly(n)" and n - 1 capacitors "dc1" to "dc(n-1)"; four switches per cell, of which
/// "mid i" and "top i" are in every ratio. Every switch has its first terminal where the potential is
/// higher while it is open, save those that a mode leaves open. With x(i) = (bit + x(i-1))/2 for the middle
/// nodes per volt at the high node, x(0) = 0, fly i holds and its switches block min(x(i), 1 - x(i)); dc i
/// holds x(i). Stepping down, per unit of output charge fly i and
/// its switches carry 2^(i-1)/2^n and dc i half of what fly(i+1) does, whatever k: with N = 2^n,
/// R_SSL = (5·4^(n-1) - 2)/(3N²·f·C) and R_FSL = 8(N² - 1)·R/(3N²) for odd k, as for the doubler, which is
/// k = 1; stepping up, 2^n/k times the charge and its square times the resistances. An even k is built as
/// k/2 with one cell less. With a current load the capacitor "out" is on the output. Source: L. G. Salem
/// and P. P. Mercier, "A recursive switched-capacitor DC-DC converter achieving 2^N - 1 ratios", IEEE J.
/// Solid-State Circuits 49(12), 2014 (from memory); derived in docs/theory/families.md.
/// </remarks>
public static class RecursiveCascade
{
    /// <summary>The most cells of a converter of one ratio.</summary>
    public const int MaximumCells = 30;

    /// <summary>The most cells of a converter with a mode per ratio.</summary>
    public const int MaximumReconfigurableCells = 10;

    /// <summary>A converter of the ratio k/2^n. Time and space are linear in n.</summary>
    /// <param name="cells">The number n, from 1 to <see cref="MaximumCells"/>.</param>
    /// <param name="numerator">The number k, from 1 to 2^n - 1; each factor 2 in it saves a cell.</param>
    /// <param name="farads">Capacitance of every capacitor in farads (F).</param>
    /// <param name="ohms">On-resistance of every switch in ohms (Ω).</param>
    /// <param name="load">What is connected to the output; a current load adds the capacitor "out".</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of its range.</exception>
    public static Converter StepDown(int cells, int numerator, double farads = 1, double ohms = 1, LoadKind load = LoadKind.Stiff) =>
        Build(cells, numerator, stepUp: false, farads, ohms, load);

    /// <summary>A converter of the ratio 2^n/k. Time and space are linear in n.</summary>
    /// <inheritdoc cref="StepDown"/>
    public static Converter StepUp(int cells, int numerator, double farads = 1, double ohms = 1, LoadKind load = LoadKind.Stiff) =>
        Build(cells, numerator, stepUp: true, farads, ohms, load);

    /// <summary>
    /// A converter with a mode for each ratio k/2^n, named by it in lowest terms ("3/8"); in a mode of a
    /// smaller denominator the first cells run without load. Time and space grow as 2^n·n.
    /// </summary>
    /// <param name="cells">The number n, from 1 to <see cref="MaximumReconfigurableCells"/>.</param>
    /// <param name="farads">Capacitance of every capacitor in farads (F).</param>
    /// <param name="ohms">On-resistance of every switch in ohms (Ω).</param>
    /// <param name="load">What is connected to the output; a current load adds the capacitor "out".</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of its range.</exception>
    public static Converter Reconfigurable(int cells, double farads = 1, double ohms = 1, LoadKind load = LoadKind.Stiff)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(cells, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(cells, MaximumReconfigurableCells);
        int denominator = 1 << cells;
        FamilyFrame frame = new($"Recursive 1/{denominator} to {denominator - 1}/{denominator}", stepUp: false, farads, ohms, load);
        AddCapacitors(frame, cells);
        for (int i = 1; i <= cells; i++)
        {
            foreach ((string name, string upper, string lower, _) in SwitchesOf(frame, i, cells))
            {
                if (i > 1 || !UsesCellBefore(name))
                {
                    frame.Switch($"{name}{i}", upper, lower, PhaseSet.None);
                }
            }
        }

        for (int k = 1; k < denominator; k++)
        {
            frame.Mode(FamilyFrame.Ratio(k, denominator), ClosedIn(k));
        }

        return frame.Build();

        IEnumerable<(string Switch, PhaseSet On)> ClosedIn(int k) =>
            from i in Enumerable.Range(1, cells)
            from s in SwitchesOf(frame, i, cells)
            where IsUsed(s.Name, i, k)
            select ($"{s.Name}{i}", (PhaseSet)s.Phase);
    }

    private static Converter Build(int cells, int numerator, bool stepUp, double farads, double ohms, LoadKind load)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(cells, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(cells, MaximumCells);
        ArgumentOutOfRangeException.ThrowIfLessThan(numerator, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(numerator, 1 << cells);
        string ratio = stepUp ? FamilyFrame.Ratio(1L << cells, numerator) : FamilyFrame.Ratio(numerator, 1L << cells);
        while (numerator % 2 == 0)
        {
            (numerator, cells) = (numerator / 2, cells - 1);
        }

        FamilyFrame frame = new($"Recursive {ratio}", stepUp, farads, ohms, load);
        AddCapacitors(frame, cells);
        for (int i = 1; i <= cells; i++)
        {
            foreach ((string name, string upper, string lower, int phase) in SwitchesOf(frame, i, cells))
            {
                if (IsUsed(name, i, numerator))
                {
                    frame.Switch($"{name}{i}", upper, lower, phase);
                }
            }
        }

        return frame.Build();
    }

    private static void AddCapacitors(FamilyFrame frame, int cells)
    {
        for (int i = 1; i <= cells; i++)
        {
            frame.Capacitor($"fly{i}", $"t{i}", $"b{i}");
        }

        for (int i = 1; i < cells; i++)
        {
            frame.Capacitor($"dc{i}", $"m{i}", Converter.ReferenceNode);
        }
    }

    private static IEnumerable<(string Name, string Upper, string Lower, int Phase)> SwitchesOf(FamilyFrame frame, int i, int cells)
    {
        string middle = i == cells ? frame.Low : $"m{i}";
        return
        [
            ("in", frame.High, $"t{i}", 1),
            ("from", $"m{i - 1}", $"t{i}", 1),
            ("mid", middle, $"b{i}", 1),
            ("top", $"t{i}", middle, 2),
            ("onto", $"b{i}", $"m{i - 1}", 2),
            ("ground", $"b{i}", Converter.ReferenceNode, 2),
        ];
    }

    private static bool UsesCellBefore(string name) => name is "from" or "onto";

    // The first cell that matters is that of the lowest bit, for which the cell before would give zero.
    private static bool IsUsed(string name, int i, int numerator)
    {
        int first = BitOperations.TrailingZeroCount(numerator) + 1;
        bool isFirst = i == first || i == 1;
        bool bit = ((numerator >> (i - 1)) & 1) == 1;
        return name switch
        {
            "in" => bit || isFirst,
            "from" => !bit && !isFirst,
            "onto" => bit && !isFirst,
            "ground" => !bit || isFirst,
            _ => true,
        };
    }
}
