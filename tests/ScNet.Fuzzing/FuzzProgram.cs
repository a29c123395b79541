using System.Globalization;
using SharpFuzz;

namespace ScNet.Fuzzing;

/// <summary>The program that a campaign runs, see .ci/campaign.</summary>
internal static class FuzzProgram
{
    /// <summary>
    /// Without arguments lists the targets, with the most bytes that each takes and its part of the executions; with a target
    /// runs texts from standard input as afl-fuzz asks for them; with a target and files runs these and says of each what came of it.
    /// </summary>
    /// <returns>1 where a property is broken.</returns>
    public static int Main(string[] arguments)
    {
        if (arguments.Length == 0)
        {
            foreach (FuzzTarget one in FuzzTargets.All)
            {
                Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{one.Name} {one.MaximumLength} {one.Weight}"));
            }

            return 0;
        }

        FuzzTarget target = FuzzTargets.Named(arguments[0]);
        if (arguments.Length > 1)
        {
            bool holds = true;
            foreach (string path in arguments.Skip(1))
            {
                holds &= Replay.Report(target, path);
            }

            return holds ? 0 : 1;
        }

        MemoryStream memory = new();
        Fuzzer.Run(stream =>
        {
            memory.SetLength(0);
            stream.CopyTo(memory);
            TimedRun.Execute(target, memory.ToArray());
        });
        return 0;
    }
}
