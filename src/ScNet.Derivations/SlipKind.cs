namespace ScNet.Derivations;

/// <summary>A well-known way to go wrong.</summary>
internal enum SlipKind
{
    /// <summary>The terminals of one element taken the other way round: all its charges and voltages have the opposite sign.</summary>
    TerminalsReversed,

    /// <summary>All values of a group have the opposite sign, or all of one phase.</summary>
    SignsFlipped,

    /// <summary>One value has the opposite sign.</summary>
    SignFlipped,

    /// <summary>Magnitudes without their signs.</summary>
    SignsDropped,

    /// <summary>Charges per unit of input charge instead of output charge, or coefficients made of such charges.</summary>
    PerInputCharge,

    /// <summary>Voltages per volt of output instead of input.</summary>
    PerOutputVoltage,

    /// <summary>One over the ratio.</summary>
    RatioInverted,

    /// <summary>The values of two phases exchanged, or those of every phase moved on by one.</summary>
    PhasesSwapped,

    /// <summary>The value that belongs to another phase.</summary>
    WrongPhase,

    /// <summary>The values of two elements exchanged.</summary>
    ElementsSwapped,

    /// <summary>Too large or too small by 2 or 4, as when a factor 1/2 is forgotten or used twice.</summary>
    Factor,

    /// <summary>The coefficient is a sum of charges, not of their squares.</summary>
    NotSquared,

    /// <summary>The coefficient of the fast-switching limit without the division by the duties.</summary>
    DutyForgotten,

    /// <summary>The flow that equal capacitors and equal switches would have, where the component values decide it.</summary>
    EqualParts,

    /// <summary>The value follows from other stated values that are wrong.</summary>
    FollowsFromWrong,

    /// <summary>The slow-switching limit stated for the fast one, or the other way round.</summary>
    LimitsExchanged,

    /// <summary>Other duties than those of the phases: exchanged, or all equal.</summary>
    WrongDuties,

    /// <summary>A symbol left out of a closed form, or one power of it.</summary>
    SymbolForgotten,
}
