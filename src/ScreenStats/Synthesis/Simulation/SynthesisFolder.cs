using System.Text.Json;
using ScreenStats.Reporting;

namespace ScreenStats.Synthesis.Simulation;

/// <summary>The folder a synthetic program is written to: under temporary names first, then moved, never over exports of others.</summary>
internal sealed class SynthesisFolder(string folder)
{
    public const string TruthFile = "truth.json";
    private const string Temporary = ".part";
    private static readonly string[] Ours =
        ["screening.csv", "confirmatory.csv", "controls.csv", "headcount.csv", "sites.csv", "program.json", "plan.json", TruthFile];

    public SynthesisTruth Write(SynthesisPlan plan, ulong seed, CancellationToken cancellationToken)
    {
        Directory.CreateDirectory(folder);
        Refuse();
        try
        {
            var truth = WriteExports(plan, seed, cancellationToken);
            WriteText("program.json", ProgramFile.Text(plan));
            WriteText("plan.json", plan.ToJson());
            WriteText(TruthFile, JsonSerializer.Serialize(truth, PlanJson.Truth) + "\n");
            cancellationToken.ThrowIfCancellationRequested();
            Publish(plan);
            return truth;
        }
        finally
        {
            foreach (var name in Ours) File.Delete(Place(name) + Temporary);
        }
    }

    private string Place(string name) => Path.Combine(folder, name);

    private void Refuse()
    {
        if (File.Exists(Place(TruthFile))) return;
        // A plan is the user's own input and may lie here already; an export may be the only copy of real data.
        var foreign = Ours.FirstOrDefault(name => name != "plan.json" && File.Exists(Place(name)));
        if (foreign is null) return;
        throw new NotOurFolderException(
            $"The folder holds a {foreign} but no {TruthFile}, so it was not written by synthesize. Choose an empty folder: nothing was written.");
    }

    private SynthesisTruth WriteExports(SynthesisPlan plan, ulong seed, CancellationToken cancellationToken)
    {
        using var screening = Open("screening.csv", true);
        using var confirmatory = Open("confirmatory.csv", true);
        using var controls = Open("controls.csv", HasControls(plan));
        using var headcount = Open("headcount.csv", plan.Enrolment is not null);
        using var sites = Open("sites.csv", PlanSurroundings.HasRegions(plan));
        PlanSurroundings.WriteSites(plan, sites);
        return new ProgramSimulation(plan, seed, screening) { Cancelled = cancellationToken }.Run(confirmatory, controls, headcount);
    }

    private static bool HasControls(SynthesisPlan plan) => plan.ControlSwabs && plan.Sites.Any(site => !site.ControlsAmongScreens);

    private Stream Open(string name, bool planned) =>
        planned ? new FileStream(Place(name) + Temporary, FileMode.Create, FileAccess.Write, FileShare.None, bufferSize: 1) : Stream.Null;

    private void WriteText(string name, string text) => File.WriteAllText(Place(name) + Temporary, text);

    private void Publish(SynthesisPlan plan)
    {
        if (!HasControls(plan)) File.Delete(Place("controls.csv"));
        if (plan.Enrolment is null) File.Delete(Place("headcount.csv"));
        if (!PlanSurroundings.HasRegions(plan)) File.Delete(Place("sites.csv"));
        foreach (var name in Ours)
        {
            if (File.Exists(Place(name) + Temporary)) File.Move(Place(name) + Temporary, Place(name), overwrite: true);
        }
    }
}
