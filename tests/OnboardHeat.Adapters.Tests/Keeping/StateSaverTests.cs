using OnboardHeat.Core;
using OnboardHeat.Engine.Keeping;

namespace OnboardHeat.Adapters.Tests.Keeping;

public sealed class StateSaverTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("onboardheat-test-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task Saved_IsSaidWhenTheDiskHoldsWhatWasOffered()
    {
        var file = new KeptFile(Path.Combine(_folder, "learnt"), hasSecondCopy: true);
        var saver = new StateSaver(file, new KeptFileContent(1, KeptState.Fresh), TimeProvider.System);
        var running = saver.RunAsync();
        for (var i = 0; i < 20; i++)
        {
            saver.Offer(KeptState.Fresh with { IsInWorks = true, WorksAgeS = i });
            await saver.SavedAsync();
            Assert.Equal(i, file.Read(_ => { })!.State.WorksAgeS);
        }

        saver.Complete();
        await running;
    }

    [Fact]
    public async Task DiskThatRefuses_KeepsNobodyWaiting()
    {
        var told = new List<string?>();
        var aFile = Path.Combine(_folder, "a-file");
        await File.WriteAllTextAsync(aFile, "where the folder should be");
        var file = new KeptFile(Path.Combine(aFile, "learnt"), hasSecondCopy: false);
        var first = new KeptFileContent(1, KeptState.Fresh);
        var saver = new StateSaver(file, first, TimeProvider.System) { Tell = told.Add };
        var saved = saver.SavedAsync();
        Assert.False(saved.IsCompleted);
        var running = saver.RunAsync();
        await saved;
        Assert.NotNull(Assert.Single(told));
        saver.Complete();
        await running;
    }
}
