namespace ScNet;

/// <summary>A place in a netlist document.</summary>
/// <param name="File">The file as the caller named it, or null for text without a file.</param>
/// <param name="Line">The line, from 1; 0 where the whole file is meant.</param>
/// <param name="Column">The column, from 1; 0 where the whole file is meant.</param>
[ShownAsText("File, line and column are one word of a message.")]
public readonly record struct SourcePosition(string? File, int Line, int Column)
{
    /// <summary>"file(line,column)".</summary>
    public override string ToString() => Line > 0 ? $"{File ?? "netlist"}({Line},{Column})" : File ?? "netlist";
}
