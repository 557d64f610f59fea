using System.Collections.Immutable;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Expected;
using ScreenStats.Evaluation.Kits;
using ScreenStats.Statistics;
using ScreenStats.Statistics.Bounds;

namespace ScreenStats.Evaluation.Accuracy;

/// <summary>What the positivity alone proves of the specificity: no confirmatory test is needed.</summary>
internal static class ProvenAnalysis
{
    /// <summary>The key of all valid tests together.</summary>
    public const string ProgramKey = "(program)";

    /// <summary>The limit for the program and for each device, and which claims it refutes.</summary>
    public static ImmutableArray<ProvenFinding> Of(ProportionFinding program, KitFindings kits, ExpectedFindings expected, double confidence)
    {
        var rows = ImmutableArray.CreateBuilder<ProvenFinding>();
        rows.Add(Of(ProgramKey, "", program, null, confidence));
        foreach (var kit in kits.Devices)
        {
            rows.Add(Of(kit.Device, kit.Device, kit.Positivity, expected.Devices.FirstOrDefault(device => device.Device == kit.Device), confidence));
        }

        return rows.ToImmutable();
    }

    private static ProvenFinding Of(string key, string name, ProportionFinding positivity, DeviceFinding? device, double confidence)
    {
        var proof = SpecificityProof.FromPositivity(
            positivity.Events, positivity.Trials, confidence, VarianceFactor.OneSided(positivity, confidence));
        return new ProvenFinding(
            key, name, positivity.Trials, positivity.Events, proof.SpecificityLower, proof.Reason?.Describe(), confidence, positivity.DesignEffect,
            device?.StatedSpecificity?.Value, device?.StatedSpecificity?.Upper, Claim(proof, device));
    }

    // A stated specificity has limits of its own: it is too low only where even its upper limit is.
    private static ClaimOutcome Claim(ProvenSpecificity proof, DeviceFinding? device)
    {
        if (device?.StatedSpecificity is not { } stated) return ClaimOutcome.NotStated;
        if (proof.Refutes(stated.Upper)) return ClaimOutcome.TooLow;
        return device.Compatibility == Compatibility.NotCompatible && device.RefutedRate.Estimate > device.StatedFalsePositiveRate
            ? ClaimOutcome.TooHigh
            : ClaimOutcome.NotRefuted;
    }
}
