namespace ScNet.Analysis;

internal static class ModeSolver
{
    public static ModeAnalysis Solve(Converter converter, Mode mode) => throw new InvalidOperationException($"{converter}{mode}");
}
