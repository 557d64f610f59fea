using ScreenStats.Counting.Cubes;

namespace ScreenStats.Synthesis.Simulation;

/// <summary>One confirmatory specimen.</summary>
internal readonly record struct ConfirmatorySpecimen(
    int Minute, uint Person, int Reported, ConfirmatoryResult Result, SpecimenReason Reason, int Stratum);
