namespace ScreenStats.Evaluation.Changes.Rows;

/// <summary>An answer that says something else than before, not only with other numbers.</summary>
/// <param name="Id">The answer's name.</param>
/// <param name="Question">The question.</param>
/// <param name="EarlierText">How the earlier evaluation answered it; empty where it did not.</param>
/// <param name="LaterText">How this one answers it; empty where it does not.</param>
public sealed record AnswerRow(string Id, string Question, string EarlierText, string LaterText);
