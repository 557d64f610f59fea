using System.Text;
using ScreenStats.Warehouse.Tests.Programs;

namespace ScreenStats.Warehouse.Tests.Roads;

/// <summary>Delimited text: the road that every other must agree with.</summary>
internal sealed class CsvRoad : IRoad
{
    public void Lay(SmallProgram program, string folder)
    {
        File.WriteAllText(Path.Combine(folder, "program.json"), program.ProgramFile());
        File.WriteAllText(Path.Combine(folder, "screening.csv"), Text(SmallProgram.ScreeningColumns, program.Screening));
        if (program.Confirmatory is not null) File.WriteAllText(Path.Combine(folder, "confirmatory.csv"), Text(SmallProgram.ConfirmatoryColumns, program.Confirmatory));
        foreach (var (name, text) in program.Files) File.WriteAllText(Path.Combine(folder, name), text);
    }

    private static string Text(string[] columns, IReadOnlyList<Row> rows)
    {
        var text = new StringBuilder(string.Join(',', columns)).Append('\n');
        foreach (var row in rows) text.AppendJoin(',', columns.Select(column => row[column])).Append('\n');
        return text.ToString();
    }
}
