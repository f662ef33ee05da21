using Loomwright.Faults;

namespace Loomwright.Proof;

/// <summary>Why a plan sees a fault once only: every pair of points where it sits was tried with an ohmmeter.</summary>
internal static class SeenOnce
{
    // With the clips' half ohm and the meter's tolerance: below this an ohmmeter cannot tell (the bands' own figures).
    private const double FewOhms = 0.75;

    public static string Why(Fault fault) => fault switch
    {
        Fault.High { Ohms: < FewOhms } => "too few ohms for a meter before power: volts lost under load tell it, once",
        Fault.Setting => "a setting joins nothing that a meter could read: what it does tells it, once",
        Fault.Dead or Fault.Reversed or Fault.Stuck or Fault.Leak => "it sits inside a part: no other two points read otherwise with it",
        _ => "no other two points where it sits read far enough from what they should",
    };
}
