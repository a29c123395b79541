namespace ScNet.Topologies;

/// <summary>
/// The Fibonacci family: the highest ratio that a number of flying capacitors can give in two phases.
/// Neighbouring stages alternate: while one is charged from the reference up, the one before it is
/// lifted onto the stage before that.
/// </summary>
/// <remarks>
/// With k stages and F(1) = F(2) = 1 the ratio is N = F(k + 2): 2, 3, 5, 8, 13, … The drawing shows
/// stage i between its neighbours, with t0 = low:
/// <code>
///  t(i-1) –charge i– ti ═fly i═ bi –ground i– gnd      charge i, ground i: closed together
///  t(i-1) –boost i– bi                                 boost i: closed in the other phase
///  tk –high– high                                      closed in phase 1, with boost k
/// </code>
/// Stage i is boosted in phase 1 where k - i is even, else in phase 2. k capacitors "fly1" to "fly(k)"
/// counted from the low node; 3k + 1 switches "charge(i)", "ground(i)", "boost(i)" and "high". Every
/// switch has its first terminal where the potential is higher while it is open. Per volt at the high
/// node fly i holds F(i + 1)/N; charge i and boost i block F(i + 1)/N, ground i F(i)/N, high F(k)/N.
/// Stepping down, per unit of output charge fly i, ground i and boost i carry F(k - i + 1)/N, charge i
/// F(k - i + 2)/N and high 1/N: R_SSL = F(k)·F(k + 1)/(N²·f·C) and R_FSL = 2·F(k + 1)·(N + 2·F(k))·R/N²;
/// stepping up, N times the charge and N² times the resistances. With a current load the capacitor
/// "out" is on the output. Source: M. S. Makowski and D. Maksimovic, PESC 1995, and M. D. Seeman and
/// S. R. Sanders, IEEE Trans. Power Electronics 23(2), 2008 (both from memory); derived in
/// docs/theory/families.md.
/// </remarks>
public static class Fibonacci
{
    /// <summary>A converter of the ratio 1/F(k + 2). Time and space are linear in k.</summary>
    /// <param name="stages">The number k of flying capacitors, from 1 to 100,000.</param>
    /// <param name="farads">Capacitance of every capacitor in farads (F).</param>
    /// <param name="ohms">On-resistance of every switch in ohms (Ω).</param>
    /// <param name="load">What is connected to the output; a current load adds the capacitor "out".</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of its range.</exception>
    public static Converter StepDown(int stages, double farads = 1, double ohms = 1, LoadKind load = LoadKind.Stiff) =>
        Build(stages, stepUp: false, farads, ohms, load);

    /// <summary>A converter of the ratio F(k + 2). Time and space are linear in k.</summary>
    /// <inheritdoc cref="StepDown"/>
    public static Converter StepUp(int stages, double farads = 1, double ohms = 1, LoadKind load = LoadKind.Stiff) =>
        Build(stages, stepUp: true, farads, ohms, load);

    private static Converter Build(int stages, bool stepUp, double farads, double ohms, LoadKind load)
    {
        _ = Guard.Count(stages, 1, FamilyFrame.MostCells, nameof(stages));
        string noun = stages == 1 ? "stage" : "stages";
        string direction = stepUp ? "up" : "down";
        FamilyFrame frame = new($"Fibonacci step-{direction} of {stages} {noun}", stepUp, farads, ohms, load);
        for (int i = 1; i <= stages; i++)
        {
            frame.Capacitor($"fly{i}", $"t{i}", $"b{i}");
        }

        for (int i = 1; i <= stages; i++)
        {
            int boosted = (stages - i) % 2 == 0 ? 1 : 2;
            string before = i == 1 ? frame.Low : $"t{i - 1}";
            frame.Switch($"charge{i}", $"t{i}", before, 3 - boosted);
            frame.Switch($"ground{i}", $"b{i}", Converter.ReferenceNode, 3 - boosted);
            frame.Switch($"boost{i}", before, $"b{i}", boosted);
        }

        frame.Switch("high", frame.High, $"t{stages}", phase: 1);
        return frame.Build();
    }
}
