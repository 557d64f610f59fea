namespace ScreenStats.Warehouse.Sql;

/// <summary>Why a row is set aside.</summary>
internal enum RowFault
{
    None = 0,
    NoPerson = 1,
    NoSite = 2,
    LongSite = 3,
    NoDate = 4,
    ImpossibleDate = 5,
    NoResult = 6,
    UnknownResult = 7,
}
