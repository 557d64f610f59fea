namespace ScreenStats.Evaluation.Expected;

/// <summary>A place on the curve of predictive values that belongs to this program.</summary>
/// <param name="Id"><c>external</c> for the program file's prevalence, <c>positivity</c> for the one behind the observed positivity.</param>
/// <param name="Label">What to write beside it.</param>
/// <param name="Prevalence">The prevalence, a fraction in (0, 1).</param>
/// <param name="Source">Where the prevalence comes from.</param>
/// <param name="Positive">Expected positive predictive value there.</param>
/// <param name="Negative">Expected negative predictive value there.</param>
public sealed record ProgramPlace(
    string Id, string Label, double Prevalence, string Source, Model.EstimateFinding Positive, Model.EstimateFinding Negative);
