using System.Collections.Immutable;
using Loomwright.Text;

namespace Loomwright.Parts;

/// <summary>Every kind of part. A new kind is its own file and one line here.</summary>
public static class Kinds
{
    public static ImmutableArray<Kind> All { get; } =
    [
        BatteryKind.Kind,
        BenchSupplyKind.Kind,
        FuseKind.Kind,
        SwitchKind.Kind,
        ButtonKind.Kind,
        BreakerKind.Kind,
        SensorSwitchKind.Kind,
        KillSwitchKind.Kind,
        ButtonBlockKind.Kind,
        LampKind.Kind,
        LampKind.TellTale,
        HornKind.Kind,
        DiodeKind.Kind,
        ResistorKind.Kind,
        ConnectorKind.Kind,
        SpliceKind.Kind,
        GroundStudKind.Kind,
        GroundBodyKind.Kind,
        RelayKind.Kind,
        FlasherKind.Kind,
        StarterRelayKind.Kind,
        SolenoidKind.Kind,
        LoadKinds.Starter,
        LoadKinds.AirHorn,
        AlternatorKind.Kind,
        LoadKinds.Coil,
        LoadKinds.Injection,
        LoadKinds.Pump,
        LoadKinds.Fan,
        LoadKinds.Grips,
        SocketKind.Kind,
        SenderKinds.Speed,
        SenderKinds.Ohm,
        LoadKinds.Load,
        LoadControllerKind.Kind,
    ];

    /// <summary>The kind of that name, or null.</summary>
    public static Kind? Find(string name) => All.FirstOrDefault(k => Names.Same(k.Name, name));
}
