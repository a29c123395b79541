using ScNet;
using ScNet.Analysis;
using ScNet.Reporting;
using ScNet.Reporting.Drawings;
using ScNet.Reporting.Html;
using ScNet.Topologies;

Converter ladder = Ladder.StepDown(3);
Picture drawing = NetworkDrawing.OfConverter(ladder);
string page = Report.OfConverter(ConverterAnalysis.Of(ladder)).ToHtml();
byte[] pixels = drawing.ToPng();
Console.WriteLine($"{drawing.Title}: {pixels.Length} bytes of pixels, {page.Length} characters of a report");
return pixels.AsSpan(1, 3).SequenceEqual("PNG"u8) && page.StartsWith("<!DOCTYPE html>", StringComparison.OrdinalIgnoreCase) ? 0 : 1;
