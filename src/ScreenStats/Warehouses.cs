using System.Diagnostics.CodeAnalysis;
using System.Reflection;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Records;

namespace ScreenStats;

/// <summary>
/// Finds the optional assembly that counts in a database. It is looked for by name when a program asks for it, so that nobody else
/// has to have it: it brings a database engine of more than 100 MB.
/// </summary>
internal static class Warehouses
{
    private const string Name = "ScreenStats.Warehouse";
    private const string Absent = "A program compiled ahead of time loads no assembly: there it is not installed, and the message says so.";
    private const string Entry = "ScreenStats.Warehouse.WarehouseReader";

    /// <summary>The assembly's one entry.</summary>
    /// <exception cref="UnusableDataException">It is not installed.</exception>
    [UnconditionalSuppressMessage("Trimming", "IL2026", Justification = Absent)]
    [UnconditionalSuppressMessage("Trimming", "IL2072", Justification = Absent)]
    public static IWarehouse Open()
    {
        try
        {
            if (Assembly.Load(new AssemblyName(Name)).GetType(Entry) is { } type && Activator.CreateInstance(type) is IWarehouse warehouse) return warehouse;
        }
        catch (Exception failure) when (failure is FileNotFoundException or FileLoadException or BadImageFormatException)
        {
        }

        throw new UnusableDataException(new Diagnostic(WarehouseDiagnostics.NotInstalled, Severity.Error, "", null, "",
            "The program file names a warehouse, but the optional part of ScreenStats that reads one is not installed. Build with -p:Warehouse=true "
            + "(dotnet run --project src/ScreenStats.Cli -p:Warehouse=true -- evaluate ...), or add the package ScreenStats.Warehouse to a program of your own."));
    }
}
