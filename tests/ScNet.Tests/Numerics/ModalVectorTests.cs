using System.Numerics;
using ScNet.Numerics;

namespace ScNet.Tests.Numerics;

/// <summary>Several modes at a time have the shapes that one has.</summary>
public sealed class ModalVectorTests
{
    [Theory]
    [InlineData(1e-12)]
    [InlineData(0.1)]
    [InlineData(0.4999)]
    [InlineData(0.5)]
    [InlineData(3)]
    [InlineData(800)]
    [InlineData(1e9)]
    public void Shapes_of_several_modes_are_those_of_one(double rate)
    {
        Vector<double> rates = new(rate);
        foreach (double time in new[] { 0, 1e-9, 0.01, 0.5, 0.99, 1 })
        {
            AssertSame(ModalFunctions.Shape(rate, 1, time), ModalFunctions.Shape(rates, 1, time), 1);
            AssertSame(ModalFunctions.ShapeByTime(rate, 1, time), ModalFunctions.ShapeByTime(rates, 1, time), Math.Max(1, rate));
            AssertSame(ModalFunctions.ShapeIntegral(rate, 1, time), ModalFunctions.ShapeIntegral(rates, 1, time), Math.Min(1, 1 / rate));
        }
    }

    private static void AssertSame(double expected, Vector<double> actual, double scale)
    {
        for (int k = 0; k < Vector<double>.Count; k++)
        {
            Assert.Equal(expected, actual[k], 1e-14 * scale);
        }
    }
}
