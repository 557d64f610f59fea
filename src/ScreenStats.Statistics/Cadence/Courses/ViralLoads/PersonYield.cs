namespace ScreenStats.Statistics.Cadence.Courses.ViralLoads;

/// <summary>What a schedule gives for one person.</summary>
/// <param name="Found">The chance that a screen finds the infection, before symptoms isolate the person.</param>
/// <param name="Screens">Screens taken up to then, while detectable.</param>
/// <param name="Alone">What is passed on after isolation by a screen, were there no isolation because of symptoms.</param>
/// <param name="Beyond">What screens take away that symptoms would not.</param>
/// <param name="Before">The chance to be isolated by a screen before anything is passed on.</param>
/// <param name="BeforeOnset">The chance to be isolated by a screen before symptoms.</param>
/// <param name="Earlier">Days from isolation by a screen to symptoms that isolate the person as well, as far as isolation lasts.</param>
internal readonly record struct PersonYield(double Found, double Screens, double Alone, double Beyond, double Before, double BeforeOnset, double Earlier);
