namespace ScNet.Design.Requirements;

/// <summary>What breaks a rule that holds between the parts of a requirement.</summary>
/// <param name="Code">One of <see cref="DiagnosticCodes"/>.</param>
/// <param name="Index">The position in its list of what breaks it, from 0; -1 where it is the whole.</param>
/// <param name="Message">What is expected, what is there and what to do.</param>
internal readonly record struct RuleFault(string Code, int Index, string Message);
