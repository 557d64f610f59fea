using System.Text;
using CsCheck;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Records.Deidentification.Pseudonyms;
using ScreenStats.Records.Formats;

namespace ScreenStats.Records.Tests.Deidentification.Pseudonyms;

[Collection(nameof(Alone))]
public sealed class PseudonymizerMemoryTests
{
    [Fact]
    public void Memory_does_not_grow_with_the_file()
    {
        using var folder = new PseudonymFolder();
        var path = Path.Combine(folder.Root, "source-large.csv");
        using (var writer = new StreamWriter(path))
        {
            writer.Write("badge,site,note\n");
            for (var i = 0; i < 400_000; i++) writer.Write($"P-{i % 50_000:D6},North,\"some text that is kept, number {i}\"\n");
        }

        var before = GC.GetTotalMemory(forceFullCollection: true);
        var highest = 0L;
        Pseudonymizer.Write(new PseudonymizeRequest { Source = path, Target = Path.Combine(folder.Root, "target.csv"), KeyFile = folder.KeyFile, Columns = ["badge"] },
            new Watch(() => highest = Math.Max(highest, GC.GetTotalMemory(forceFullCollection: true))), TestContext.Current.CancellationToken);
        (highest - before).Should().BeLessThan(24 << 20);
    }

    private sealed class Watch(Action look) : IProgress<ReadProgress>
    {
        private int told;

        public void Report(ReadProgress value)
        {
            if (++told % 20 == 0) look();
        }
    }
}
