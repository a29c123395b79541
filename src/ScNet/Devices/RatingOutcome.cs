namespace ScNet.Devices;

/// <summary>How an element stands against the rating of its kind.</summary>
public enum RatingOutcome
{
    /// <summary>Nothing bounds its voltage: no verdict can be given.</summary>
    Undetermined,

    /// <summary>One device stands the voltage.</summary>
    WithinRating,

    /// <summary>A stack stands the voltage, of as many devices as the verdict says.</summary>
    NeedsStack,

    /// <summary>It would take more devices in series than the limit allows.</summary>
    NotAllowed,
}
