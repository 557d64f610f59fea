using ScreenStats.Warehouse.Tests.Programs;

namespace ScreenStats.Warehouse.Tests.Roads;

/// <summary>One way from rows to a tally.</summary>
internal interface IRoad
{
    /// <summary>Puts the rows where this road reads them from, and gives the folder of a program that reads them there.</summary>
    void Lay(SmallProgram program, string folder);
}
