using BenchmarkDotNet.Columns;
using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Diagnosers;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Toolchains.InProcess.Emit;

namespace ScNet.Benchmarks;

/// <summary>
/// What all benchmarks share: they run inside this process, whatever job the command line asks for,
/// and count allocations.
/// </summary>
internal sealed class InProcessConfig : ManualConfig
{
    public InProcessConfig()
    {
        Add(DefaultConfig.Instance);
        AddJob(Job.Default.WithToolchain(new InProcessEmitToolchain(logOutput: true)).AsMutator());
        AddDiagnoser(MemoryDiagnoser.Default);
        HideColumns(Column.Gen0, Column.Gen1, Column.Gen2);
    }
}
