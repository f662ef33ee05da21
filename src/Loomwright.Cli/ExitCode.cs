namespace Loomwright;

/// <summary>What the program's end tells a script.</summary>
public static class ExitCode
{
    /// <summary>Answered; notes are allowed.</summary>
    public const int Answered = 0;

    /// <summary>Answered, with at least one thing to stop for or to look at.</summary>
    public const int Look = 1;

    /// <summary>The input cannot be read.</summary>
    public const int Unreadable = 2;

    /// <summary>Called in a way that has no answer.</summary>
    public const int WrongUsage = 3;

    /// <summary>Our own fault.</summary>
    public const int OwnFault = 70;

    /// <summary>Stopped from the keyboard.</summary>
    public const int Stopped = 130;
}
