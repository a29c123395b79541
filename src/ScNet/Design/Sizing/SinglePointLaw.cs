namespace ScNet.Design.Sizing;

/// <summary>How the loss at one point depends on frequency f and on capacitance C and conductance G in all: S/(C f) + R/G + f (β C + γ G).</summary>
/// <param name="ChargeSharing">S = I² K_c in square amperes (A²).</param>
/// <param name="Conduction">R = I² K_g in square amperes (A²).</param>
/// <param name="JoulesPerFarad">β in joules per farad (J/F), of plates: zero where they are not counted.</param>
/// <param name="JoulesPerSiemens">γ in joules per siemens (J/S), of gates and junctions.</param>
public sealed record SinglePointLaw(double ChargeSharing, double Conduction, double JoulesPerFarad, double JoulesPerSiemens)
{
    /// <summary>S in square amperes.</summary>
    public double ChargeSharing { get; init; } = Guard.InRange(ChargeSharing, allowZero: false, nameof(ChargeSharing));

    /// <summary>R in square amperes.</summary>
    public double Conduction { get; init; } = Guard.InRange(Conduction, allowZero: false, nameof(Conduction));

    /// <summary>β in joules per farad.</summary>
    public double JoulesPerFarad { get; init; } = Guard.InRange(JoulesPerFarad, allowZero: true, nameof(JoulesPerFarad));

    /// <summary>γ in joules per siemens.</summary>
    public double JoulesPerSiemens { get; init; } = Guard.InRange(JoulesPerSiemens, allowZero: false, nameof(JoulesPerSiemens));

    /// <summary>The loss in watts (W).</summary>
    /// <param name="frequencyHz">Frequency in hertz (Hz).</param>
    /// <param name="farads">All capacitance in farads (F).</param>
    /// <param name="siemens">All conductance in siemens (S).</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is not positive, or not from 1e-60 to 1e60.</exception>
    public double LossWatts(double frequencyHz, double farads, double siemens)
    {
        _ = Guard.InRange(frequencyHz, allowZero: false, nameof(frequencyHz));
        _ = Guard.InRange(farads, allowZero: false, nameof(farads));
        _ = Guard.InRange(siemens, allowZero: false, nameof(siemens));
        return (ChargeSharing / (farads * frequencyHz)) + (Conduction / siemens) + (frequencyHz * ((JoulesPerFarad * farads) + (JoulesPerSiemens * siemens)));
    }
}
