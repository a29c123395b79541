using System.Globalization;
using System.Text;
using Fractions;
using ScNet.Netlists;

namespace ScNet.Fuzzing.Targets;

/// <summary>Netlist documents: what is accepted is written and read back as an equal converter, what is not has an error at its place.</summary>
internal static class NetlistTarget
{
    public static void Try(byte[] bytes)
    {
        if (!TextInput.IsText(bytes))
        {
            using MemoryStream stream = new(bytes);
            NetlistReading refused = NetlistReader.Read(stream);
            Property.Findings(Encoding.UTF8.GetString(bytes), refused.HasResult, refused.Diagnostics);
        }

        _ = Read(TextInput.Of(bytes));
    }

    /// <summary>The converter of a text, which was held to the properties; null where it has none.</summary>
    public static Converter? Read(string text)
    {
        NetlistReading reading = NetlistReader.Read(text);
        Property.Findings(text, reading.HasResult, reading.Diagnostics);
        if (reading.Converter is not { } converter)
        {
            return null;
        }

        if (!IsWritable(converter, out string written))
        {
            return converter;
        }

        NetlistReading again = NetlistReader.Read(written);
        Property.Holds(again.HasResult, $"to read what was written, but got {string.Join('\n', again.Diagnostics)} for\n{written}");
        Property.Same(ObjectText.Of(converter), ObjectText.Of(again.Converter!), "what was read and what was written and read again");
        Property.Same(written, NetlistWriter.ToToml(again.Converter!), "what is written once and twice");
        return converter;
    }

    // duties that are neither short decimals nor short fractions are documented to have no text
    private static bool IsWritable(Converter converter, out string written)
    {
        try
        {
            written = NetlistWriter.ToToml(converter);
            return true;
        }
        catch (ArgumentException) when (converter.Phases.Any(p => IsLong(p.Duty)) || converter.Capacitors.Any(c => c.Controlled is { } share && IsLong(share)))
        {
            written = string.Empty;
            return false;
        }
    }

    private static bool IsLong(Fraction value)
    {
        Fraction reduced = value.Reduce();
        return reduced.Numerator.ToString(CultureInfo.InvariantCulture).Length + reduced.Denominator.ToString(CultureInfo.InvariantCulture).Length > 60;
    }
}
