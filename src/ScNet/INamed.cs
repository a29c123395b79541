namespace ScNet;

/// <summary>A list whose entries have names: of elements, nodes, modes or phases.</summary>
internal interface INamed
{
    /// <summary>The names, in the order of the entries.</summary>
    NameIndex Names { get; }
}
