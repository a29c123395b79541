namespace ScNet;

/// <summary>What is known of an interval.</summary>
internal enum IntervalState : byte
{
    /// <summary>Nothing bounds it.</summary>
    Undetermined,

    /// <summary>It has ends.</summary>
    Determined,

    /// <summary>It holds nothing yet.</summary>
    Empty,
}
