namespace ScreenStats.Evaluation.Cadence.Courses;

/// <summary>What each option does to one infection, and what the screens of the data could find.</summary>
/// <param name="Detection">The chance that a screen finds the infection, for each option.</param>
/// <param name="Removed">The share of the infectious time that falls after isolation, for each option; empty where the infectious time is not known.</param>
/// <param name="Caught">The chance that the person is away before the infectious time begins, for each option; empty likewise.</param>
/// <param name="RemovedBySymptoms">That share without any screen.</param>
/// <param name="InfectiousDays">Infectious days of one infection with nothing done.</param>
/// <param name="Away">Days that the person is away, by a screen, by symptoms or by both, for each option; empty where it is not stated how long an isolation is.</param>
/// <param name="AwayBySymptoms">The same without any screen; 0 likewise.</param>
/// <param name="Exposure">Days' worth of infections that the screens of the data find; 0 where there are none.</param>
internal sealed record CourseFigures(double[] Detection, double[] Removed, double[] Caught, double RemovedBySymptoms, double InfectiousDays, double[] Away, double AwayBySymptoms, double Exposure);
