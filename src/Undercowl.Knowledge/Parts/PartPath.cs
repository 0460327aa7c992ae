namespace Undercowl.Knowledge;

/// <summary>What a part mainly serves. The engine is drawn path by path, each from its source to the cylinders.</summary>
public enum PartPath
{
    Start,
    Spark,
    Fuel,
    Air,
    Compression,
    Cooling,

    /// <summary>Stands for what is not listed.</summary>
    Unlisted,
}
