namespace Loomwright.Drawing;

/// <summary>What a sheet shows.</summary>
public enum SheetKind
{
    /// <summary>The whole bike.</summary>
    Overview,

    /// <summary>One function from plus to minus.</summary>
    Function,

    /// <summary>The parts of one place.</summary>
    Place,

    /// <summary>One plug, cavity by cavity.</summary>
    Plug,

    /// <summary>The overview with one wire to follow; not on the list, since there is one for every wire.</summary>
    Wire,
}

/// <summary>One of the sheets a bike can be drawn on.</summary>
/// <param name="Of">The name of the function, the key of the place, the name of the plug, the name of the wire; empty for the overview.</param>
/// <param name="Title">How it is called on a list.</param>
public sealed record SheetName(SheetKind Kind, string Of, string Title);
