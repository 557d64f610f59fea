namespace ScreenStats.Evaluation.Worth.Prices;

/// <summary>The amounts of the program file that costs are made of.</summary>
internal enum Price
{
    Screen,
    Kit,
    OperatorMinutes,
    OperatorHour,
    Supervision,
    Waste,
    ConfirmatoryTest,
    IsolationDay,
    WorkingDay,
    Illness,
    Outbreak,
}
