namespace Loomwright.Records;

/// <summary>The records cannot be read or written now. The message says why and what to do, for the person.</summary>
public sealed class RecordsException : Exception
{
    public RecordsException(string message)
        : base(message)
    {
    }

    public RecordsException(string message, Exception inner)
        : base(message, inner)
    {
    }

    public RecordsException()
    {
    }
}
