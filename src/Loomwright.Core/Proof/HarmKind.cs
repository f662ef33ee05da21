namespace Loomwright.Proof;

/// <summary>What a fault can do that cannot be put right by taking it out again.</summary>
public enum HarmKind
{
    /// <summary>A wire passes the temperature class of its insulation.</summary>
    Overheats,

    /// <summary>A fuse opens, or the supply gives what no load asks for.</summary>
    ShortsSupply,

    /// <summary>A box fed the wrong way round or through an output, a diode or fuse beyond its rating.</summary>
    PastRating,

    /// <summary>The starter turns unasked.</summary>
    StarterTurns,

    /// <summary>The fuel pump runs unasked.</summary>
    PumpRuns,

    /// <summary>A coil made for seconds is fed unasked.</summary>
    CoilFed,

    /// <summary>The engine runs on after its kill switch or its key.</summary>
    EngineRunsOn,
}

/// <summary>The kinds in words.</summary>
public static class HarmWords
{
    /// <summary>A kind as a heading.</summary>
    public static string Of(HarmKind kind) => kind switch
    {
        HarmKind.Overheats => "a wire gets too hot",
        HarmKind.ShortsSupply => "the supply is shorted",
        HarmKind.PastRating => "a part is taken past its rating",
        HarmKind.StarterTurns => "the starter turns unasked",
        HarmKind.PumpRuns => "the fuel pump runs unasked",
        HarmKind.CoilFed => "a coil is fed unasked",
        HarmKind.EngineRunsOn => "the engine cannot be stopped",
        _ => throw new InvalidOperationException("a harm of no known kind"),
    };
}
