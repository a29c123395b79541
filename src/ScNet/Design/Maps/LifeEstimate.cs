using ScNet.Design.Losses;
using ScNet.Design.Regulation;
using ScNet.Design.Requirements;

namespace ScNet.Design.Maps;

/// <summary>What modes make of a cell's charge over its discharge and the profile of the load: hours, efficiency, waste.</summary>
/// <remarks>
/// In each slice of charge and state of the load the mode serves that draws the least current from the cell; the estimate ends where
/// some state is not held any longer. Cost: slices times states times modes, some points of a mode each. Derivation: docs/theory/maps.md.
/// </remarks>
public sealed class LifeEstimate
{
    private const double CoulombsPerAmpereHour = 3600;
    private const int DefaultSlices = 256;
    private const int MostSlices = 100_000;

    private readonly double[] _lossJoules;

    private LifeEstimate(LifeSum sum, IReadOnlyList<RegulatedMode> modes, double? cellCoulombs)
    {
        double scale = cellCoulombs ?? 1;
        CellCoulombs = cellCoulombs;
        Modes = modes;
        Seconds = cellCoulombs is null ? null : sum.Seconds * scale;
        HeldShare = sum.HeldShare;
        AverageEfficiency = sum.InputJoules > 0 ? sum.OutputJoules / sum.InputJoules : null;
        OutputJoules = sum.OutputJoules * scale;
        InputJoules = sum.InputJoules * scale;
        SourceJoules = sum.SourceJoules * scale;
        WastedShare = 1 - sum.LosslessCoulombs;
        SkippingShare = sum.Seconds > 0 ? sum.SkippingSeconds / sum.Seconds : 0;
        ModeShares = [.. sum.ModeSeconds.Select(s => sum.Seconds > 0 ? s / sum.Seconds : 0)];
        _lossJoules = [.. Enumerable.Range(0, LossModel.KindCount).Select(kind => sum.Loads.Sum(l => l.LossJoules[kind]) * scale)];
        Loads = [.. LoadSum.Budgets(sum.Loads)];
        OutputWatts = sum.Seconds > 0 ? sum.OutputJoules / sum.Seconds : null;
        InputWatts = sum.Seconds > 0 ? sum.InputJoules / sum.Seconds : null;
        End = sum.End;
    }

    /// <summary>The modes, in the order given.</summary>
    public IReadOnlyList<RegulatedMode> Modes { get; }

    /// <summary>Charge of the full cell in coulombs (C); null where it is not told: energies are then those of one coulomb.</summary>
    public double? CellCoulombs { get; }

    /// <summary>Life in seconds (s) from full to where some state of the load is not held any longer; null without the charge of the cell.</summary>
    public double? Seconds { get; }

    /// <summary>Life in hours (h); null without the charge of the cell.</summary>
    public double? Hours => Seconds / CoulombsPerAmpereHour;

    /// <summary>The share of the cell's charge that is used before some state of the load is lost; 1 where none is.</summary>
    public double HeldShare { get; }

    /// <summary>Output energy over the energy that the converter takes in; null where nothing is held.</summary>
    public double? AverageEfficiency { get; }

    /// <summary>Energy in joules (J) that the load gets.</summary>
    public double OutputJoules { get; }

    /// <summary>Energy in joules (J) that the converter takes in.</summary>
    public double InputJoules { get; }

    /// <summary>Power into the load in watts (W), on average over the time; null where nothing is held.</summary>
    public double? OutputWatts { get; }

    /// <summary>Power into the converter in watts (W), on average over the time; null where nothing is held.</summary>
    public double? InputWatts { get; }

    /// <summary>Each state of the load, those of one name together; empty where nothing is held.</summary>
    public IReadOnlyList<LoadBudget> Loads { get; }

    /// <summary>Energy in joules (J) that the resistance of the source takes.</summary>
    public double SourceJoules { get; }

    /// <summary>The share of the cell's charge that a converter and a source without losses would not need for the same output energy, what is left in the cell included.</summary>
    public double WastedShare { get; }

    /// <summary>The share of the time in which cycles are left out.</summary>
    public double SkippingShare { get; }

    /// <summary>The share of the time in which each mode serves, as in <see cref="Modes"/>.</summary>
    public IReadOnlyList<double> ModeShares { get; }

    /// <summary>Where some state of the load is not held any longer; null where all are to the end.</summary>
    public LifeEnd? End { get; }

    /// <summary>Energy in joules (J) of a kind of loss.</summary>
    /// <param name="kind">The kind.</param>
    public double JoulesOf(LossKind kind) => _lossJoules[(int)kind];

    /// <summary>Estimates it for a requirement: its curve, or where it has none every voltage of its range from the highest on alike.</summary>
    /// <param name="modes">The modes.</param>
    /// <param name="requirement">The requirement.</param>
    /// <exception cref="ArgumentException">There is no mode, or the requirement has no state of the load, no output voltage, or no curve of the kind.</exception>
    public static LifeEstimate Of(IReadOnlyList<RegulatedMode> modes, Requirement requirement) => Of(modes, requirement, DefaultSlices);

    /// <summary>The same with a number of slices.</summary>
    /// <param name="modes">The modes.</param>
    /// <param name="requirement">The requirement.</param>
    /// <param name="slices">The number of slices of charge, about; from 1 to 100,000.</param>
    /// <exception cref="ArgumentException">There is no mode, or the requirement has no state of the load, no output voltage, or no curve of the kind.</exception>
    public static LifeEstimate Of(IReadOnlyList<RegulatedMode> modes, Requirement requirement, int slices)
    {
        ArgumentNullException.ThrowIfNull(requirement);
        return Of(modes, DischargeSlices.CurveOf(requirement), AskedPoints.Loads(requirement), requirement.SourceOhms, requirement.CellCoulombs, slices);
    }

    /// <summary>Estimates it.</summary>
    /// <param name="modes">The modes, at least one.</param>
    /// <param name="discharge">The discharge curve by falling state of charge, at least two points.</param>
    /// <param name="loads">What the load draws, each with its output voltage; shares are taken relative to their sum.</param>
    /// <param name="sourceOhms">Resistance of the source in ohms (Ω).</param>
    /// <param name="cellCoulombs">Charge in coulombs (C) from state of charge 1 to 0; null where life is not asked for.</param>
    /// <param name="slices">The number of slices of charge, about; from 1 to 100,000.</param>
    /// <exception cref="ArgumentException">There is no mode, no load, a load without a voltage, or a curve that does not fall in its state of charge.</exception>
    public static LifeEstimate Of(
        IReadOnlyList<RegulatedMode> modes,
        IReadOnlyList<DischargePoint> discharge,
        IReadOnlyList<LoadShare> loads,
        double sourceOhms,
        double? cellCoulombs,
        int slices = DefaultSlices)
    {
        ArgumentNullException.ThrowIfNull(modes);
        ArgumentNullException.ThrowIfNull(discharge);
        ArgumentNullException.ThrowIfNull(loads);
        Guard.Count(slices, 1, MostSlices, nameof(slices));
        _ = Guard.InRange(sourceOhms, allowZero: true, nameof(sourceOhms));
        _ = cellCoulombs is { } charge ? Guard.InRange(charge, allowZero: false, nameof(cellCoulombs)) : 0;
        if (modes.Count == 0)
        {
            throw new ArgumentException("Expected at least one mode.", nameof(modes));
        }

        if (loads.Count == 0 || loads.Any(l => l.OutputVolts is null))
        {
            throw new ArgumentException("Expected at least one load, each with an output voltage.", nameof(loads));
        }

        IReadOnlyList<RegulatedMode> all = [.. modes];
        LifeSum sum = new(all, loads, sourceOhms);
        sum.Discharge(DischargeSlices.Of(discharge, slices));
        return new LifeEstimate(sum, all, cellCoulombs);
    }

    /// <summary>Hours, efficiency and waste.</summary>
    public override string ToString() => FormattableString.Invariant(
        $"{(Hours is { } hours ? $"{hours:G4} h, " : string.Empty)}efficiency {UnitText.Percent(AverageEfficiency)}, {UnitText.Percent(WastedShare)} of the charge wasted{(End is null ? string.Empty : $"; {End}")}");
}
