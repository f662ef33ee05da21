using System.Globalization;
using System.Runtime.InteropServices;
using Loomwright.Network;

namespace Loomwright.Oracle;

/// <summary>
/// The general circuit simulator ngspice, run inside this process; shares no code with the solver. It has one circuit
/// at a time and one thread.
/// </summary>
public static class Ngspice
{
    private const string Library = "libngspice.so.0";

    private static readonly Lock Turn = new();
    private static readonly List<string> Log = [];
    private static readonly SaysSomething Hears = (text, _, _) =>
    {
        Log.Add(Marshal.PtrToStringUTF8(text) ?? "");
        return 0;
    };

    private static readonly WantsToExit Stays = (_, _, _, _, _) => 0;
    private static readonly Lazy<bool> Ready = new(Start);

    /// <summary>One operating point: node potentials and branch currents, NaN for a node it does not know and a branch without current there.</summary>
    public sealed record Point(double[] Potentials, double[] Amps);

    private delegate int SaysSomething(nint text, int id, nint user);

    private delegate int WantsToExit(int status, [MarshalAs(UnmanagedType.I1)] bool unload, [MarshalAs(UnmanagedType.I1)] bool quit, int id, nint user);

    /// <summary>Whether the library is installed.</summary>
    public static bool IsInstalled => Ready.Value;

    /// <summary>
    /// The operating point, or null where the simulator has none: singular, not converged, an error in its log.
    /// </summary>
    public static Point? Solve(Circuit circuit, double tolerance, ReadOnlySpan<double> start = default)
    {
        lock (Turn)
        {
            Load(circuit, tolerance, start);
            try
            {
                return Run() ? Read(circuit) : null;
            }
            finally
            {
                Unload();
            }
        }
    }

    /// <summary>Puts a circuit in, for repeated <see cref="Run"/>.</summary>
    public static void Load(Circuit circuit, double tolerance, ReadOnlySpan<double> start = default)
    {
        var lines = Deck.Of(circuit, tolerance, start).Select(Marshal.StringToCoTaskMemUTF8).Append(0).ToArray();
        _ = ngSpice_Circ(lines);
        foreach (var line in lines)
        {
            Marshal.FreeCoTaskMem(line);
        }
    }

    /// <summary>Solves what is loaded; false when the log says that the result is not valid.</summary>
    public static bool Run()
    {
        Log.Clear();
        _ = ngSpice_Command("op");
        return !Log.Exists(line => line.Contains("ingular", StringComparison.Ordinal) || line.Contains("failed", StringComparison.OrdinalIgnoreCase)
            || line.Contains("aborted", StringComparison.OrdinalIgnoreCase) || line.Contains("out of range", StringComparison.Ordinal));
    }

    /// <summary>Takes the circuit and its results out.</summary>
    public static void Unload()
    {
        Forget();
        _ = ngSpice_Command("remcirc");
    }

    /// <summary>Drops the results so far; the circuit stays.</summary>
    public static void Forget() => _ = ngSpice_Command("destroy all");

    /// <summary>What the simulator said in the last run.</summary>
    public static IReadOnlyList<string> Said => Log;

    /// <summary>The values of the last run, null when one is missing.</summary>
    public static Point? Read(Circuit circuit)
    {
        var point = new Point(new double[circuit.NodeCount], new double[circuit.Branches.Length]);
        for (var n = 1; n < circuit.NodeCount; n++)
        {
            point.Potentials[n] = double.NaN;
            if (Deck.Names(circuit, n))
            {
                if (Value(string.Create(CultureInfo.InvariantCulture, $"n{n}")) is not { } volts)
                {
                    return null;
                }

                point.Potentials[n] = volts;
            }
        }

        for (var b = 0; b < point.Amps.Length; b++)
        {
            point.Amps[b] = double.NaN;
            if (Deck.HasCurrent(circuit.Branches[b]))
            {
                if (Value(Deck.Current(circuit, b)) is not { } amps)
                {
                    return null;
                }

                point.Amps[b] = amps;
            }
        }

        return point;
    }

    // struct vector_info: name, type, flags, real data, complex data, length.
    private static double? Value(string vector)
    {
        var info = ngGet_Vec_Info(vector);
        var data = info == 0 ? 0 : Marshal.ReadIntPtr(info, 16);
        return data == 0 || Marshal.ReadInt32(info, 32) < 1 ? null : BitConverter.Int64BitsToDouble(Marshal.ReadInt64(data));
    }

    private static bool Start()
    {
        if (!NativeLibrary.TryLoad(Library, out _))
        {
            return false;
        }

        _ = ngSpice_Init(Hears, null, Stays, 0, 0, 0, 0);
        // No transient in place of an operating point that does not converge.
        _ = ngSpice_Command("optran 1 0 0 0 0 0");
        return true;
    }

    [DllImport(Library)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int ngSpice_Init(SaysSomething print, SaysSomething? status, WantsToExit exit, nint data, nint initialData, nint background, nint user);

    [DllImport(Library)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int ngSpice_Circ(nint[] lines);

    [DllImport(Library)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int ngSpice_Command([MarshalAs(UnmanagedType.LPUTF8Str)] string command);

    [DllImport(Library)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern nint ngGet_Vec_Info([MarshalAs(UnmanagedType.LPUTF8Str)] string vector);
}
