namespace ScNet.Design.Losses;

/// <summary>The formulas of the losses and their sources, as docs/theory/losses.md derives them.</summary>
internal static class LossFormulas
{
    private const string Seeman = "M. D. Seeman and S. R. Sanders, IEEE Trans. Power Electronics 23(2), 2008 (from memory)";
    private const string Erickson = "R. W. Erickson and D. Maksimovic, Fundamentals of Power Electronics (from memory)";
    private const string Rabaey = "J. M. Rabaey, A. Chandrakasan and B. Nikolic, Digital Integrated Circuits (from memory)";

    public static IReadOnlyList<LossFormula> All { get; } =
    [
        new(LossKind.Conduction, "conduction", "κ·R·I², κ = Σ a²/D over the phases, for each switch and each series resistance; with inductors also the ripple, as straight lines", Seeman),
        new(LossKind.ChargeSharing, "charge sharing", "(R_out(f) − R_FSL)·I², by capacitor in proportion to its part of the slow limit", Seeman + "; R_out exactly: docs/theory/output-impedance.md"),
        new(LossKind.GateDrive, "gate drive", "f·n·Q_gate·V_drive/η_rail, n the times per period that the switch closes", Rabaey + "; the rail: common practice, no source"),
        new(LossKind.Junctions, "junctions", "f·½·C_j·Σ Δv² over the steps of the voltage across the open switch, C_j = Q_j/V_rated", Rabaey + "; docs/theory/losses.md"),
        new(LossKind.Plates, "plates", "f·½·C_plate·Σ Δv² over the steps of the plate's potential from phase to phase", "docs/theory/parasitic-capacitances.md; common practice, no source"),
        new(LossKind.Leakage, "leakage", "capacitors: I_leak·v²/V_rated; open switches: I_leak·Σ D·|v|", "common practice, no source"),
        new(LossKind.BodyDiodes, "body diodes", "f·t_dead·V_diode·i at every edge at which a switch's current flows in the direction of its body diode", Erickson),
        new(LossKind.ReverseRecovery, "reverse recovery", "f·Q_stored·|v|, v what the switch blocks after an edge in which its body diode has carried a current", Erickson),
        new(LossKind.Windings, "windings", "R_winding·i_rms², with straight-line ripple", Erickson),
        new(LossKind.Cores, "cores", "P·(f/1 MHz)^a·(Δi/1 A)^b, Δi the ripple peak to peak", "C. P. Steinmetz, Trans. AIEE 9, 1892 (from memory), with current for field"),
        new(LossKind.Control, "control", "P_fixed + f·Q_cycle·V_in", "common practice, no source"),
        new(LossKind.LinearDrop, "linear drop", "(V_in − V_out)·I in a linear regulator", "common practice, no source"),
    ];

    /// <summary>What a kind of loss is called in a sentence.</summary>
    public static string NameOf(LossKind kind) => All[(int)kind].Name;
}
