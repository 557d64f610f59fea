namespace ScreenStats.Evaluation.Worth.Prices;

/// <summary>How amounts are called: in the program file and tables, and for people.</summary>
internal static class PriceWords
{
    public static (string Key, string Id, string Name) Of(Price price) => price switch
    {
        Price.Screen => ("screen", "screen", "cost of a screen"),
        Price.Kit => ("kit", "kit", "price of a test device"),
        Price.OperatorMinutes => ("operatorMinutes", "operator-minutes", "operator's minutes for a screen"),
        Price.OperatorHour => ("operatorHour", "operator-hour", "cost of an operator's hour"),
        Price.Supervision => ("supervision", "supervision", "supervision of a screen"),
        Price.Waste => ("waste", "waste", "disposal of a screen's waste"),
        Price.ConfirmatoryTest => ("confirmatoryTest", "confirmatory-test", "price of a confirmatory test"),
        Price.IsolationDay => ("isolationDay", "isolation-day", "cost of a day of isolation"),
        Price.WorkingDay => ("workingDay", "working-day", "cost of a working day lost to a false alarm"),
        Price.Illness => ("illness", "illness", "cost of a case of illness"),
        Price.Outbreak => ("outbreak", "outbreak", "cost of an outbreak (five infections or more)"),
        _ => throw new ArgumentOutOfRangeException(nameof(price), price, "Not an amount of this analysis."),
    };
}
