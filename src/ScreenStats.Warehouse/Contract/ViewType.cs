namespace ScreenStats.Warehouse.Contract;

/// <summary>The types that columns of the views have.</summary>
internal enum ViewType
{
    Text = 0,
    Time = 1,
    Date = 2,
    YesNo = 3,
    Whole = 4,
}
