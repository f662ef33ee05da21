using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;

namespace Loomwright.Checks;

/// <summary>Every rule there is. A new rule is its own file, its page, and one line here.</summary>
public static class Rules
{
    public static ImmutableArray<Rule> All { get; } =
    [
        BoxNeverWakes.Rule,
        NoWayBack.Rule,
        FeedJoinedToGround.Rule,
        PositionJoinsFeedAndGround.Rule,
        PolarisedPartReversed.Rule,
        UnfusedFeed.Rule,
        AmpacityRuleUnknown.Rule,
        FuseAboveWire.Rule,
        BranchBehindLargerFuse.Rule,
        BothFilamentsAtOnce.Rule,
        ChangeoverWanted.Rule,
        KillSwitchWrongSense.Rule,
        KillSwitchFailsRunning.Rule,
        BrakeLightsNothing.Rule,
        StarterTurnsInGear.Rule,
        PositionDrains.Rule,
        FlasherBelowItsLoad.Rule,
        SharedTellTale.Rule,
        LampGlowsWhenOff.Rule,
        LoadResistorHot.Rule,
        BoxOnPositiveGround.Rule,
        FlashRate.Rule,
        HazardNeedsKey.Rule,
        StopLampFromOneBrake.Rule,
        StopLampFlashes.Rule,
        StopLampDisturbed.Rule,
        IndicatorNeverDark.Rule,
        HornSilent.Rule,
        MainBeamUntold.Rule,
        HeadlampOutWhileRunning.Rule,
        DataLeadOnAnotherInput.Rule,
        InputJoinedToWrongSide.Rule,
        BlockWithoutGround.Rule,
        OutputAboveLimit.Rule,
        OutputCannotStart.Rule,
        ColdLoadResetsBox.Rule,
        TotalAboveLimit.Rule,
        RegulatorWithoutOwnFuse.Rule,
        RegulatorBehindMainFuse.Rule,
        FeedsJoinedBehindFuses.Rule,
        FuseBelowLoad.Rule,
        ChargingAboveBattery.Rule,
        DropAboveLimit.Rule,
        GroundOnStarterPost.Rule,
        NoEngineStrap.Rule,
        EngineStrapThin.Rule,
        HeadBearingOnlyGround.Rule,
        SensorOnInsulatedEngine.Rule,
        BoxGroundCarriesLoads.Rule,
        TooManyRings.Rule,
        RingsUnalike.Rule,
        PushOnHot.Rule,
        LampBurnsShort.Rule,
        TwoWiresInOneCrimp.Rule,
        LiveUnusedLead.Rule,
    ];

    /// <summary>All findings of a design: the severest first, then in the order of the rules, then in file order.</summary>
    public static ImmutableArray<Finding> Check(Loom loom) => Check(new Study(loom));

    internal static ImmutableArray<Finding> Check(Study study) => [.. All.SelectMany(r => r.Look(study)).OrderByDescending(f => f.Severity)];
}
