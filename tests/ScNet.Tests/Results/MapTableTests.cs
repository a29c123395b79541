using System.Text.Json;
using ScNet.Design.Maps;
using ScNet.Results;
using ScNet.Tests.Design.Maps;

namespace ScNet.Tests.Results;

public sealed class MapTableTests
{
    private static readonly OperatingMap s_map = OperatingMap.Of([InventedGears.Half, InventedGears.Third], [3, 4], [1.2, 1.6], [1e-3]);

    [Fact]
    public void A_row_has_the_figures_of_its_point()
    {
        using JsonDocument document = JsonDocument.Parse(ResultTable.OfMap(s_map).ToJson());
        Assert.Equal(0.75, document.RootElement.GetProperty("conditions").GetProperty("heldShare").GetDouble());
        JsonElement[] rows = [.. document.RootElement.GetProperty("rows").EnumerateArray()];
        Assert.Equal(4, rows.Length);
        for (int k = 0; k < 4; k++)
        {
            MapPoint point = s_map.At(k / 2, k % 2);
            Assert.Equal(point.OutputVolts, rows[k].GetProperty("outputVolts").GetDouble());
            Assert.Equal(point.BestMode?.Name, rows[k].GetProperty("mode").GetString());
            Assert.Equal(point.Efficiency, point.IsHeld ? rows[k].GetProperty("efficiency").GetDouble() : null);
            Assert.Equal(point.IsHeld ? JsonValueKind.Number : JsonValueKind.Null, rows[k].GetProperty("hertz").ValueKind);
            Assert.Equal(JsonValueKind.Null, rows[k].GetProperty("duty").ValueKind);
            Assert.Equal(point.UsableModes.Count, rows[k].GetProperty("usableModes").GetArrayLength());
        }

        Assert.Equal(s_map.At(0, 0).Best.TotalLossWatts, rows[0].GetProperty("lossWatts").EnumerateObject().Sum(l => l.Value.GetDouble()), 1e-15);
    }

    [Fact]
    public void Text_in_columns_has_a_line_per_point()
    {
        string[] lines = ResultTable.OfMap(s_map).ToCsv().Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(5, lines.Length);
        Assert.StartsWith("inputVolts,outputVolts,loadAmperes,mode,outcome,hertz,duty,efficiency,linearEfficiency,idealEfficiency,inputWatts,lossWatts.conduction,", lines[0], StringComparison.Ordinal);
        Assert.StartsWith("3,1.6,0.001,,,,,,", lines[2], StringComparison.Ordinal);
    }
}
