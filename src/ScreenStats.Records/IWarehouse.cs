using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Programs;

namespace ScreenStats.Records;

/// <summary>Counts a program where its data live: what the optional assembly ScreenStats.Warehouse does.</summary>
public interface IWarehouse
{
    /// <summary>
    /// Reads a program whose screening and confirmatory exports are views of a database. Exports of controls, headcount and sites are
    /// files of the folder, as ever.
    /// </summary>
    /// <param name="settings">What the program file says; <see cref="ProgramSettings.Warehouse"/> is stated.</param>
    /// <param name="folder">The program's folder.</param>
    /// <param name="options">How it is read; null: the defaults.</param>
    /// <returns>The same as <see cref="ProgramReader"/> gives of files with the same rows.</returns>
    /// <exception cref="UnusableDataException">The database cannot be reached, its views are not as agreed, or the data cannot be used.</exception>
    ReadingResult Read(ProgramSettings settings, string folder, ReadOptions? options = null);
}
