using System.Text;
using ScNet.Design.Requirements;

namespace ScNet.Fuzzing.Targets;

/// <summary>Requirement documents: what is accepted is written and read back as an equal requirement, what is not has an error at its place.</summary>
internal static class RequirementTarget
{
    public static void Try(byte[] bytes)
    {
        if (!TextInput.IsText(bytes))
        {
            using MemoryStream stream = new(bytes);
            RequirementReading refused = RequirementReader.Read(stream);
            Property.Findings(Encoding.UTF8.GetString(bytes), refused.HasResult, refused.Diagnostics);
        }

        string text = TextInput.Of(bytes);
        RequirementReading reading = RequirementReader.Read(text);
        Property.Findings(text, reading.HasResult, reading.Diagnostics);
        if (reading.Requirement is not { } requirement)
        {
            return;
        }

        string written = RequirementWriter.ToToml(requirement);
        RequirementReading again = RequirementReader.Read(written);
        Property.Holds(again.HasResult, $"to read what was written, but got {string.Join('\n', again.Diagnostics)} for\n{written}");
        Property.Same(ObjectText.Of(requirement), ObjectText.Of(again.Requirement), "what was read and what was written and read again");
        Property.Same(written, RequirementWriter.ToToml(again.Requirement!), "what is written once and twice");
    }
}
