namespace Loomwright.Drawing;

/// <summary>What a sheet shows.</summary>
public enum SheetKind
{
    /// <summary>The whole bike.</summary>
    Overview,

    /// <summary>One function from plus to minus.</summary>
    Function,
}

/// <summary>One of the sheets a bike can be drawn on.</summary>
/// <param name="Of">The name of the function; empty for the overview.</param>
/// <param name="Title">How it is called on a list.</param>
public sealed record SheetName(SheetKind Kind, string Of, string Title);
