using System.Numerics;

namespace ScNet.Kernel;

/// <summary>One step of an elimination: target := (scale · target - factor · source) / content.</summary>
internal readonly record struct RowOperation<T>(int Target, int Source, T Scale, T Factor, T Content)
    where T : struct, IBinaryInteger<T>;
