namespace ScNet.Derivations.Expressions;

/// <summary>Whether a quantity is a function of the duties, and why not.</summary>
public enum DutyFormOutcome
{
    /// <summary>Averages over the period fix it for any duties: there is a form.</summary>
    Exact,

    /// <summary>Averages leave it open; ripple, losses or a controller decide.</summary>
    Undetermined,

    /// <summary>Averages contradict each other unless the duties meet a condition: give durations that are tied.</summary>
    NeedsTiedDuties,

    /// <summary>The form has too many terms to be of use.</summary>
    TooLong,
}
