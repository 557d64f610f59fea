namespace ScreenStats.Evaluation.Answers;

/// <summary>For whom an answer is written first.</summary>
public enum Reader
{
    /// <summary>The occupational-health analyst.</summary>
    Analyst = 0,

    /// <summary>The epidemiology consultant.</summary>
    Consultant = 1,

    /// <summary>The manager of the program.</summary>
    Manager = 2,
}
