using System.Text.RegularExpressions;

namespace ScNet.Cli.Tests;

/// <summary>A folder of netlist documents that goes with the test.</summary>
internal sealed partial class NetlistFolder : IDisposable
{
    public const string Half =
        """
        name = "Half"
        input = "vin"
        output = "vout"

        [capacitors]
        fly = { between = ["p", "n"], farads = 1e-9 }

        [switches]
        s1 = { between = ["vin", "p"], ohms = 2.0, on = 1 }
        s2 = { between = ["n", "vout"], ohms = 2.0, on = 1 }
        s3 = { between = ["p", "vout"], ohms = 2.0, on = 2 }
        s4 = { between = ["n", "gnd"], ohms = 2.0, on = 2 }
        """;

    /// <summary>A sound mode, and one that shorts the input; capacitor "idle" never matters.</summary>
    public const string TwoWays =
        """
        name = "Two ways"
        input = "vin"
        output = "vout"

        [phases]
        duty = [0.3, 0.7]
        names = ["charge", "discharge"]

        [capacitors]
        fly = { between = ["p", "n"], farads = 1.2e-9, esr_ohms = 0.02 }
        idle = { between = ["p", "nowhere"], farads = 1e-9 }

        [switches]
        s1 = { between = ["vin", "p"] }
        s2 = { between = ["n", "vout"] }
        s3 = { between = ["p", "vout"] }
        s4 = { between = ["n", "gnd"] }
        s5 = { between = ["vin", "gnd"] }
        "s 6" = { between = ["vin", "x"] }

        [modes."1/2"]
        s1 = "charge"
        s2 = 1
        s3 = 2
        s4 = 2

        [modes.shorted]
        s1 = 1
        s2 = 1
        s3 = 2
        s4 = 2
        s5 = 1
        """;

    public const string Third =
        """
        name = "Third"
        input = "vin"
        output = "vout"

        [capacitors]
        c1 = { between = ["p1", "n1"], farads = 1e-9 }
        c2 = { between = ["p2", "n2"], farads = 2e-9 }

        [switches]
        s1 = { between = ["vin", "p1"], on = 1 }
        s2 = { between = ["n1", "p2"], on = 1 }
        s3 = { between = ["n2", "vout"], on = 1 }
        s4 = { between = ["p1", "vout"], on = 2 }
        s5 = { between = ["n1", "gnd"], on = 2 }
        s6 = { between = ["p2", "vout"], on = 2 }
        s7 = { between = ["n2", "gnd"], on = 2 }
        """;

    /// <summary>One capacitor between three places: four ratios.</summary>
    public const string Bridge =
        """
        name = "Bridge"
        input = "vin"
        output = "vout"

        [capacitors]
        fly = { between = ["p", "n"], farads = 1e-8 }

        [switches]
        s1 = { between = ["vin", "p"], on = [] }
        s2 = { between = ["p", "vout"], on = [] }
        s3 = { between = ["p", "gnd"], on = [] }
        s4 = { between = ["vin", "n"], on = [] }
        s5 = { between = ["n", "vout"], on = [] }
        s6 = { between = ["n", "gnd"], on = [] }
        """;

    public string Folder { get; } = Directory.CreateTempSubdirectory("scnet-tests-").FullName;

    /// <summary>Writes a file and returns its path.</summary>
    public string Write(string name, string text)
    {
        string path = PathOf(name);
        File.WriteAllText(path, text);
        return path;
    }

    public string PathOf(string name) => Path.Combine(Folder, name);

    /// <summary>The text with this folder written as "@", so that it is the same wherever the test runs; where a line that begins with it breaks depends on its length.</summary>
    public string Relative(string text) => Continued().Replace(
        text.Replace(Folder + Path.DirectorySeparatorChar, "@/", StringComparison.Ordinal), m => LineBreak().Replace(m.Value, " "));

    /// <summary>As <see cref="Relative"/>, with the wording of findings, which is not the tool's, left out, also where it goes on below.</summary>
    public string Layout(string text) => Finding().Replace(Relative(text), "$1: …");

    public void Dispose() => Directory.Delete(Folder, recursive: true);

    [GeneratedRegex("^ *@/.*(?:\n {4,}[^ @].*)+", RegexOptions.Multiline)]
    private static partial Regex Continued();

    [GeneratedRegex("\n +")]
    private static partial Regex LineBreak();

    [GeneratedRegex("((?:warning|error) [a-z-]+): .*(?:\n {4,}.*)*")]
    private static partial Regex Finding();
}
