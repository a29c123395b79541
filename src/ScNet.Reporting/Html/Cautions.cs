namespace ScNet.Reporting.Html;

/// <summary>What every report says of dangers, and what its figures take for granted.</summary>
internal static class Cautions
{
    /// <summary>The dangers, and to whom the last word belongs.</summary>
    public static IReadOnlyList<string> Dangers { get; } =
    [
        "Lithium cells and power converters can burn and injure.",
        "Every figure here is that of an ideal model. It supports, and does not replace, verification at the level of transistors, measurement, "
        + "the ratings of the makers, local codes and the judgement of a qualified engineer; where they disagree with this report, they are right.",
    ];

    /// <summary>What all figures take for granted.</summary>
    public static IReadOnlyList<string> OfModel { get; } =
    [
        "A switch is a constant resistance while it is closed and nothing while it is open; it changes over in no time, and all switches of a phase together.",
        "Capacitances, resistances and inductances have the values of the netlist, whatever voltage, temperature, age and batch.",
        "The source holds its voltage, the load its current or, where it is called stiff, its voltage. The converter has settled: every period is like the one before. Start-up, faults and steps of the load are not looked at.",
        "Nothing is known of layout: wires have no resistance, capacitance or inductance but what the netlist names.",
        "Voltages per volt of input and charges per unit of output charge are exact fractions where topology decides them; \"?\" stands for what nothing determines, and never for zero.",
    ];

    public static IReadOnlyList<string> OfStress { get; } =
    [
        "Stress is that of ideal voltages without load, ripple and overshoot. Bounds marked as floating assume that nodes left to themselves keep their charge or leak through open switches; a coupling to nodes that switch is not bounded.",
        "A rating is taken as a sharp limit. What life a device has near its rating is the maker's to say.",
    ];

    public static IReadOnlyList<string> OfOperation { get; } =
    [
        "Efficiency without devices counts conduction and charge redistribution only: no gate drive, switching, leakage or control.",
    ];

    public static IReadOnlyList<string> OfLosses { get; } =
    [
        "Losses with devices hold for the process as the requirement describes it; each kind of loss is a formula with limits of its own, named below. Kinds that are not in the list are not counted.",
    ];

    public static IReadOnlyList<string> OfComparison { get; } =
    [
        "Equal totals of capacitance and switch conductance are common ground, not equal cost: devices of a higher rating take more area.",
        "Limits marked \"~\" are estimates, as the charges of that mode depend on component values; \"≥\" marks lower bounds.",
    ];

    public static IReadOnlyList<string> OfDesign { get; } =
    [
        "The ranking is no better than the requirement: its discharge, its shares of time and its process decide it. What would change the winner is listed where it was asked for.",
        "The winner is the best of the candidates asked for and no more. Candidates within rounding of each other are equally good.",
        "The life of the cell is that of a cell whose open voltage and resistance follow the curve given, at one temperature, without ageing or self-discharge.",
        "Control loops, start-up, protection, area of wiring beyond what the process names, noise and cost take no part.",
    ];
}
