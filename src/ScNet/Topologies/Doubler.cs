namespace ScNet.Topologies;

/// <summary>
/// The doubler family, also called exponential: two-to-one cells one after another, with a dc capacitor
/// on every node between two cells.
/// </summary>
/// <remarks>
/// With k stages the ratio is N = 2^k. Stage i lies between d(i-1) and di, where d0 = low and dk = high:
/// <code>
///  di –high i– ti ═fly i═ bi –boost i– d(i-1)          closed in phase 1
///  ti –charge i– d(i-1),  bi –ground i– gnd            closed in phase 2
///  di ═dc i═ gnd                                       for i below k
/// </code>
/// k capacitors "fly1" to "fly(k)" counted from the low node and k - 1 capacitors "dc1" to "dc(k-1)";
/// 4k switches "charge(i)", "ground(i)", "high(i)", "boost(i)". Every switch has its first terminal
/// where the potential is higher while it is open. Per volt at the high node fly i holds 2^(i-1)/N and
/// dc i 2^i/N; the four switches of stage i block 2^(i-1)/N. Stepping down, per unit of output charge
/// fly i and the switches of stage i carry 2^(k-i)/N and dc i 2^(k-i-1)/N:
/// R_SSL = (5·4^(k-1) - 2)/(3·N²·f·C) and R_FSL = 8(N² - 1)·R/(3·N²); stepping up, N times the charge
/// and N² times the resistances. With a current load the capacitor "out" is on the output. Source:
/// M. D. Seeman and S. R. Sanders, IEEE Trans. Power Electronics 23(2), 2008 (from memory); derived in
/// docs/theory/families.md.
/// </remarks>
public static class Doubler
{
    /// <summary>A converter of the ratio 1/2^k. Time and space are linear in k.</summary>
    /// <param name="stages">The number k of stages, from 1 to 100,000.</param>
    /// <param name="farads">Capacitance of every capacitor in farads (F).</param>
    /// <param name="ohms">On-resistance of every switch in ohms (Ω).</param>
    /// <param name="load">What is connected to the output; a current load adds the capacitor "out".</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of its range.</exception>
    public static Converter StepDown(int stages, double farads = 1, double ohms = 1, LoadKind load = LoadKind.Stiff) =>
        Build(stages, stepUp: false, farads, ohms, load);

    /// <summary>A converter of the ratio 2^k. Time and space are linear in k.</summary>
    /// <inheritdoc cref="StepDown"/>
    public static Converter StepUp(int stages, double farads = 1, double ohms = 1, LoadKind load = LoadKind.Stiff) =>
        Build(stages, stepUp: true, farads, ohms, load);

    private static Converter Build(int stages, bool stepUp, double farads, double ohms, LoadKind load)
    {
        _ = Guard.Count(stages, 1, FamilyFrame.MostCells, nameof(stages));
        string noun = stages == 1 ? "stage" : "stages";
        string direction = stepUp ? "up" : "down";
        FamilyFrame frame = new($"Doubler step-{direction} of {stages} {noun}", stepUp, farads, ohms, load);
        for (int i = 1; i <= stages; i++)
        {
            frame.Capacitor($"fly{i}", $"t{i}", $"b{i}");
        }

        for (int i = 1; i < stages; i++)
        {
            frame.Capacitor($"dc{i}", Between(i), Converter.ReferenceNode);
        }

        for (int i = 1; i <= stages; i++)
        {
            frame.Switch($"charge{i}", $"t{i}", Between(i - 1), phase: 2);
            frame.Switch($"ground{i}", $"b{i}", Converter.ReferenceNode, phase: 2);
            frame.Switch($"high{i}", Between(i), $"t{i}", phase: 1);
            frame.Switch($"boost{i}", Between(i - 1), $"b{i}", phase: 1);
        }

        return frame.Build();

        string Between(int i) => i == 0 ? frame.Low : i == stages ? frame.High : $"d{i}";
    }
}
