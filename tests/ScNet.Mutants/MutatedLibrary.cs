using System.Reflection;

namespace ScNet.Mutants;

/// <summary>The library with all mutants in it, of which one at a time is in force: what Stryker adds to it.</summary>
internal static class MutatedLibrary
{
    private static readonly Type s_control = typeof(Converter).Assembly.GetTypes().SingleOrDefault(t => t.Name == "MutantControl")
        ?? throw new InvalidDataException("There are no mutants in the library.");

    private static readonly FieldInfo s_active = Field("ActiveMutant"), s_isCapturing = Field("CaptureCoverage");
    private static readonly MethodInfo s_reached = s_control.GetMethod("GetCoverageData")!;

    /// <summary>Puts a mutant in force, or none: -1.</summary>
    public static void Set(int mutant) => s_active.SetValue(null, mutant);

    public static void Capture(bool isOn) => s_isCapturing.SetValue(null, isOn);

    /// <summary>The mutants that were reached since it was asked for the last time, and those of them in what is set up once.</summary>
    public static (IEnumerable<int> All, IEnumerable<int> Static) Reached()
    {
        var lists = (IList<int>[])s_reached.Invoke(null, null)!;
        return (lists[0], lists[1]);
    }

    private static FieldInfo Field(string name) => s_control.GetField(name, BindingFlags.Public | BindingFlags.Static) ?? throw new InvalidDataException($"The mutants have no switch '{name}'.");
}
