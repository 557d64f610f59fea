using ScreenStats.Testing;

namespace ScreenStats.Cli.Tests;

public sealed class GoldenTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("golden").FullName;

    private string FilePath => Path.Combine(folder, "a", "text.txt");

    public void Dispose() => Directory.Delete(folder, true);

    [Fact]
    public void A_missing_file_fails() =>
        FluentActions.Invoking(() => Golden.Check(FilePath, "x\n", null, null)).Should().Throw<GoldenException>().WithMessage("*missing*");

    [Fact]
    public void An_update_writes_the_file_and_then_only_that_text_passes()
    {
        Golden.Check(FilePath, "one\ntwo\n", "1", null);
        Golden.Check(FilePath, "one\ntwo\n", null, "true");
        FluentActions.Invoking(() => Golden.Check(FilePath, "one\n2\n", null, null)).Should().Throw<GoldenException>().WithMessage("*line 2*");
    }

    [Fact]
    public void An_update_is_refused_on_a_build_server()
    {
        FluentActions.Invoking(() => Golden.Check(FilePath, "x\n", "1", "true")).Should().Throw<GoldenException>().WithMessage("*refused*");
        File.Exists(FilePath).Should().BeFalse();
    }

    [Fact]
    public void A_carriage_return_fails() =>
        FluentActions.Invoking(() => Golden.Check(FilePath, "x\r\n", null, null)).Should().Throw<GoldenException>();
}
