using ScNet.Design.Losses;

namespace ScNet.Reporting.Html;

/// <summary>The formula, the source and the section of the theory of every kind of figure in a report.</summary>
internal static class Origins
{
    private const string Derived = "derived there";
    private const string Seeman = "M. D. Seeman and S. R. Sanders, IEEE Trans. Power Electronics 23(2), 2008 (from memory)";
    private const string Desoer = "C. A. Desoer and E. S. Kuh, Basic Circuit Theory, 1969 (from memory)";
    private const string Averages = "exact-steady-state";
    private const string Utilisation = "utilisation";

    /// <summary>What topology decides, the limits and the blocking voltages.</summary>
    /// <param name="hasInductors">Whether a converter has inductors.</param>
    public static IReadOnlyList<Origin> OfTopology(bool hasInductors) =>
    [
        new("Ideal ratio, capacitor voltages", "B_C·v_C + b_out·v_out + b_in = 0 over every loop of every phase, per volt of input", "D. Maksimovic and S. Dhar, PESC 1999; " + Desoer, Averages, "The ideal point: Kirchhoff's voltage law"),
        new("Charge multipliers", "B_C^{T}·c = 0 and b_out^{T}·c = 1, a^{j} = B^{jT}·c^{j}, per unit of charge into the load", Seeman, Averages, "Charge flow: Kirchhoff's current law and balance"),
        new("Charges that component values decide", "the least Σ a²/C among the flows that balance", Derived, "value-decided-flow", "Slow limit"),
        new("Slow-switching limit and its coefficients", "R_SSL = Σ_i Σ_j (a_i^{j})²/(2·C_i·f)", Seeman, Averages, "The two limits"),
        new("Fast-switching limit and its coefficients", "R_FSL = Σ_s R_s·Σ_j (a_s^{j})²/D_j", Seeman, Averages, "The two limits"),
        new("Blocking voltages, node potentials", "sums of loop voltages from the reference, first less second node of the open switch", Desoer, Averages, "The ideal point: Kirchhoff's voltage law"),
        .. hasInductors ? [new Origin("Averages with inductors, charge sharing", "average voltage of an inductor = 0; what held currents carry steadily takes no part in impulses", Derived, "averages-with-inductors", "Charge sharing")] : Array.Empty<Origin>(),
    ];

    /// <summary>The impedance over the frequency.</summary>
    public static IReadOnlyList<Origin> OfImpedance() =>
    [
        new("Exact output impedance", "R_out = T·Σ_j Σ_k [ζ_k·(q_k − g_k)² + (2·g_k·q_k − g_k²)/τ_j], ζ = (λ/2)·coth(λ·τ/2)", Derived, "output-impedance", "One period"),
        new("The same with inductors, plates or parasitic capacitances; ratio under load", "(1 − e^{A·T})·x = Y·u at the start of a period, averages from it", Derived + "; series and squares of exponentials: M. S. Paterson and L. J. Stockmeyer, 1973 (from memory)", "two-port", "One period"),
        new("Corner frequency", "f where R_SSL(f) = R_FSL", "common practice, no source", Averages, "The two limits"),
        new("Estimate: root of the squares", "√(R_SSL² + R_FSL²)", Seeman, "output-impedance", "What the limits bound"),
        new("Estimate: 2.54-norm", "(R_SSL^{2.54} + R_FSL^{2.54})^{1/2.54}", "M. S. Makowski, ICSES 2012 (from memory)", "output-impedance", "What the limits bound"),
        new("Estimate: single pair", "R_SSL·coth(R_SSL/R_FSL)", Derived, "output-impedance", "What the limits bound"),
    ];

    /// <summary>Stress in modes and at changes.</summary>
    public static IReadOnlyList<Origin> OfStress() =>
    [
        new("Stress in a mode", "largest and least difference of ideal potentials over all phases, times the highest input voltage", Desoer, "stress", "In a mode"),
        new("Bounds of floating nodes", "I_x ⊇ hull{I_i(phase before) − o_i} ∪ hull{I_k(this phase) − o_i}", Derived, "stress", "Floating nodes"),
        new("Stress at a change of mode", "capacitors keep their voltages at the first instant, the new switches are closed", Derived, "stress", "The instant of a change"),
    ];

    /// <summary>An operating point.</summary>
    public static IReadOnlyList<Origin> OfOperation() =>
    [
        new("Voltages, currents, ripple, waveforms", "x(t) = e^{A·t}·x_0 + (forced part), periodic over all phases", Derived, "two-port", "Waveforms, squares and losses"),
        new("Dissipation, efficiency", "Σ R·i_rms² over all resistances; output power over input power", Derived, "two-port", "Waveforms, squares and losses"),
    ];

    /// <summary>Losses by kind, as the library states them.</summary>
    public static IReadOnlyList<Origin> OfLosses() =>
        [.. LossBudget.Formulas.Select(f => new Origin($"Loss: {f.Name}", f.Formula, f.Source, "losses", SectionOf(f.Kind)))];

    /// <summary>Converters side by side.</summary>
    /// <param name="hasSilicon">Whether at equal silicon too.</param>
    public static IReadOnlyList<Origin> OfComparison(bool hasSilicon) =>
    [
        new("Limits at equal totals: own proportions", "(1/X)·Σ k·(Σ x/x_i), X the total of f·C or of G", Seeman, Utilisation, "Equal totals"),
        new("Limits at equal totals: best split", "(Σ √k)²/X", Seeman, Utilisation, "Equal totals"),
        new("Charge times voltage", "Σ_i (½·Σ_j |a_i^{j}|)·|v_i|/|ratio|, for switches with what they block", Seeman, Utilisation, "Charge times voltage"),
        new("Over the rating", "largest ideal voltage less the rating", "common practice, no source", Utilisation, "Voltages against a rating"),
        .. hasSilicon ? [new Origin("Limits at equal silicon", "n devices in series have n² times the area of one for the same value", "common practice, no source", "stress", "Equal silicon")] : Array.Empty<Origin>(),
    ];

    /// <summary>A ranked choice.</summary>
    public static IReadOnlyList<Origin> OfDesign() =>
    [
        new("Frequency that holds an output", "R_out(f) = (m·V_in − V_out)/I", Derived, "regulation", "By the frequency"),
        new("Duty that holds an output", "m(D)·V_in − R(D)·I = V_out", Derived, "regulation", "By the duty"),
        new("Linear regulator", "efficiency at best V_out/V_in", "common practice, no source", "regulation", "Linear"),
        new("Sizes", "least Σ_p w_p·[R_p·I² + f_p·(Σ β_i·C_i + Σ γ_s·G_s + c) + Σ λ_e·v_e + d] within the area", Derived, "sizing", "What is to be small"),
        new("No other sizes lose less by more than", "loss less the bound of the dual problem, over the loss", Derived, "sizing", "Certificate"),
        new("Map, ideal envelope", "V_out/(m·V_in), m the lowest ratio of all modes that is at least V_out/V_in", Derived, "maps", "A map"),
        new("Life of the cell", "Q·∫ ds/ī(s), ī = Σ_l w_l·i_l(V_oc(s))", Derived, "maps", "Life"),
        new("Density, stacks and corners of devices", "area and capacitance per area at the bias and the corner of the requirement", "common practice, no source", "devices", "Area that is taken"),
    ];

    private static string SectionOf(LossKind kind) => kind switch
    {
        LossKind.Conduction or LossKind.ChargeSharing => "What the load takes",
        LossKind.GateDrive => "Gates",
        LossKind.Junctions or LossKind.Plates => "What swings whatever the load is",
        LossKind.Leakage => "Leakage",
        LossKind.BodyDiodes => "Dead time",
        LossKind.Windings => "Ripple",
        LossKind.Control => "Control",
        _ => "Sum",
    };
}
