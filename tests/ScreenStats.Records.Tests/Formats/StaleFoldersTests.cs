using ScreenStats.Records.Formats.Converting;

namespace ScreenStats.Records.Tests.Formats;

/// <summary>What a killed process left goes; what anybody uses, or anybody else made, stays.</summary>
public sealed class StaleFoldersTests : IDisposable
{
    private readonly string temporary = Directory.CreateTempSubdirectory("stale-").FullName;

    public void Dispose() => Directory.Delete(temporary, recursive: true);

    [Fact]
    public void What_a_killed_process_left_is_removed_with_all_that_is_in_it()
    {
        var left = Made("screenstats-a");
        StaleFolders.Remove(temporary);
        Directory.Exists(left).Should().BeFalse();
    }

    [Fact]
    public void What_is_in_use_stays_until_it_is_not()
    {
        using var used = new PrivateFolder();
        used.Create(out var file).Dispose();
        File.Exists(Path.Combine(used.Path!, PrivateFolder.Lock)).Should().BeTrue();
        // Moved under our own folder of temporary files: the lock goes with the file.
        var moved = Path.Combine(temporary, Path.GetFileName(used.Path!));
        if (OperatingSystem.IsWindows()) return;
        Directory.Move(used.Path!, moved);
        StaleFolders.Remove(temporary);
        File.Exists(Path.Combine(moved, Path.GetFileName(file))).Should().BeTrue();
        used.Dispose();
        StaleFolders.Remove(temporary);
        Directory.Exists(moved).Should().BeFalse();
    }

    [Fact]
    public void A_folder_of_another_name_without_a_lock_or_open_to_others_stays()
    {
        var other = Made("screenstat-a");
        var without = Made("screenstats-b");
        File.Delete(Path.Combine(without, PrivateFolder.Lock));
        var file = Path.Combine(temporary, "screenstats-c");
        File.WriteAllText(file, "");
        var open = Made("screenstats-d");
        if (!OperatingSystem.IsWindows()) File.SetUnixFileMode(open, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute | UnixFileMode.GroupRead);
        StaleFolders.Remove(temporary);
        Directory.Exists(other).Should().BeTrue();
        Directory.Exists(without).Should().BeTrue();
        File.Exists(file).Should().BeTrue();
        Directory.Exists(open).Should().Be(!OperatingSystem.IsWindows());
    }

    [Fact]
    public void No_link_is_followed_neither_to_a_folder_nor_to_a_lock_nor_inside()
    {
        if (OperatingSystem.IsWindows()) return;
        var outside = Made("outside");
        Directory.CreateSymbolicLink(Path.Combine(temporary, "screenstats-link"), outside);
        var locked = Made("screenstats-locked");
        File.Delete(Path.Combine(locked, PrivateFolder.Lock));
        File.CreateSymbolicLink(Path.Combine(locked, PrivateFolder.Lock), Path.Combine(outside, PrivateFolder.Lock));
        var holding = Made("screenstats-holding");
        Directory.CreateSymbolicLink(Path.Combine(holding, "inside"), outside);

        StaleFolders.Remove(temporary);

        File.Exists(Path.Combine(outside, "1")).Should().BeTrue();
        Directory.Exists(locked).Should().BeTrue();
        Directory.Exists(holding).Should().BeFalse("the link in it goes, not what it leads to");
    }

    [Fact]
    public void A_folder_of_temporary_files_that_is_not_there_is_no_reason_to_stop()
    {
        var act = () => StaleFolders.Remove(Path.Combine(temporary, "nowhere"));
        act.Should().NotThrow();
    }

    [Fact]
    public void A_new_reading_removes_what_an_earlier_one_left()
    {
        // In the folder of temporary files itself, under a name that no conversion gets.
        var left = Path.Combine(Path.GetTempPath(), PrivateFolder.Prefix + "left-" + Path.GetFileName(temporary));
        Made(left);
        new FileConverter(1, null, () => { }).Dispose();
        // A test beside this one may be the one that removes it, and not have ended yet.
        SpinWait.SpinUntil(() => !Directory.Exists(left), TimeSpan.FromSeconds(30)).Should().BeTrue();
    }

    private string Made(string name)
    {
        var path = Path.Combine(temporary, name);
        if (OperatingSystem.IsWindows()) Directory.CreateDirectory(path);
        else Directory.CreateDirectory(path, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        File.WriteAllText(Path.Combine(path, "1"), "person\nZzyzx\n");
        File.WriteAllText(Path.Combine(path, PrivateFolder.Lock), "");
        return path;
    }
}
