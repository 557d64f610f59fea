#if !WAREHOUSE
namespace ScreenStats.Warehouse.Tests;

/// <summary>Says what is not tested where the packages are not asked for.</summary>
public class WithoutWarehouseTests
{
    [Fact]
    public void Servers_that_fail_are_told() => Assert.Skip("Shards that stop, dropped connections, wrong passwords and views need packages that nobody downloads unasked: SCREENSTATS_WAREHOUSE=true dotnet test brings them.");
}
#endif
