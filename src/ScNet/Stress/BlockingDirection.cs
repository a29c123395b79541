namespace ScNet.Stress;

/// <summary>Which polarities a switch must block.</summary>
public enum BlockingDirection
{
    /// <summary>No voltage is across it at any time.</summary>
    None,

    /// <summary>Its first terminal is never below its second.</summary>
    Positive,

    /// <summary>Its first terminal is never above its second.</summary>
    Negative,

    /// <summary>Both polarities occur, or can occur within the bounds of a floating node.</summary>
    Both,
}
