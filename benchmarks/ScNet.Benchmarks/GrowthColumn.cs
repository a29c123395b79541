using System.Globalization;
using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Columns;
using BenchmarkDotNet.Parameters;
using BenchmarkDotNet.Reports;
using BenchmarkDotNet.Running;

namespace ScNet.Benchmarks;

/// <summary>
/// Shows the exponent p of time ~ sizeᵖ from the smallest size of a benchmark to each other one, the
/// size being its only parameter.
/// </summary>
[AttributeUsage(AttributeTargets.Class)]
internal sealed class GrowthColumnAttribute : ColumnConfigBaseAttribute
{
    public GrowthColumnAttribute()
        : base(new GrowthColumn())
    {
    }

    private sealed class GrowthColumn : IColumn
    {
        public string Id => nameof(GrowthColumn);

        public string ColumnName => "Exponent";

        public string Legend => "p of median time ~ sizeᵖ, from the smallest size to this one";

        public bool AlwaysShow => true;

        public ColumnCategory Category => ColumnCategory.Custom;

        public int PriorityInCategory => 0;

        public bool IsNumeric => true;

        public UnitType UnitType => UnitType.Dimensionless;

        public bool IsAvailable(Summary summary) => true;

        public bool IsDefault(Summary summary, BenchmarkCase benchmarkCase) => false;

        public string GetValue(Summary summary, BenchmarkCase benchmarkCase, SummaryStyle style) => GetValue(summary, benchmarkCase);

        public string GetValue(Summary summary, BenchmarkCase benchmarkCase)
        {
            BenchmarkCase smallest = summary.BenchmarksCases
                .Where(c => c.Descriptor == benchmarkCase.Descriptor && c.Job == benchmarkCase.Job)
                .MinBy(Size)!;
            double growth = Size(benchmarkCase) / Size(smallest);
            return growth > 1 && Time(summary, benchmarkCase) / Time(summary, smallest) is double slowdown
                ? (Math.Log(slowdown) / Math.Log(growth)).ToString("0.00", CultureInfo.InvariantCulture)
                : "-";
        }

        private static double Size(BenchmarkCase benchmarkCase)
        {
            ParameterInstance size = benchmarkCase.Parameters.Items[0];
            return Convert.ToDouble(size.Value, CultureInfo.InvariantCulture);
        }

        private static double? Time(Summary summary, BenchmarkCase benchmarkCase) => summary[benchmarkCase]?.ResultStatistics?.Median;
    }
}
