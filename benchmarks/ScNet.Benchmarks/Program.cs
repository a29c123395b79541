using BenchmarkDotNet.Running;
using ScNet.Benchmarks;

BenchmarkSwitcher.FromAssembly(typeof(InProcessConfig).Assembly).Run(args, new InProcessConfig());
