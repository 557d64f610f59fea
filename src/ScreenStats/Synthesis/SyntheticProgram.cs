using ScreenStats.Synthesis.Simulation;

namespace ScreenStats.Synthesis;

/// <summary>Writes the exports of a program that never was, from a plan that says what is true and a seed.</summary>
public static class SyntheticProgram
{
    /// <summary>
    /// Writes screening.csv, confirmatory.csv, controls.csv, headcount.csv and sites.csv (where planned), program.json, plan.json and
    /// truth.json. The same plan and seed give the same bytes on every machine: the generator is xoshiro256** seeded by
    /// SplitMix64, one stream for each site, and nothing but the four operations of arithmetic is done with its numbers.
    /// Memory grows with people and specimens, not with runs.
    /// </summary>
    /// <param name="plan">What is true.</param>
    /// <param name="seed">Any number.</param>
    /// <param name="folder">Folder to write to; created where it does not exist.</param>
    /// <param name="cancellationToken">Stops the work; the folder is then as it was.</param>
    /// <returns>The truth, as in truth.json.</returns>
    /// <exception cref="Counting.Diagnostics.UnusableDataException">The plan states something impossible; every fault is in it.</exception>
    /// <exception cref="IOException">The folder holds exports that were not written here, or cannot be written to.</exception>
    public static SynthesisTruth Write(SynthesisPlan plan, ulong seed, string folder, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentException.ThrowIfNullOrEmpty(folder);
        plan.Validate();
        var target = new SynthesisFolder(folder);
        return target.Write(plan, seed, cancellationToken);
    }

    /// <summary>Rows of the screening export of a plan, without writing it.</summary>
    internal static long CountRows(SynthesisPlan plan)
    {
        plan.Validate();
        return new ProgramSimulation(plan, 1, Stream.Null).Run(Stream.Null, Stream.Null, Stream.Null).Rows;
    }
}
